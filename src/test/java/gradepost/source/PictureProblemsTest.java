package gradepost.source;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.pack.Picture;
import gradepost.source.file.Input;
import gradepost.source.file.SourceFiles;
import gradepost.source.pack.PackFile;
import gradepost.yaml.Reading;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The picture of a landmark, a signal or a station: read once, made small, kept with the pack; or
 * told what is wrong.
 */
class PictureProblemsTest {
  private static final String SIGNAL = "kind: stop and caution";
  private static final String STATION = "code: WLN";
  private static final String SIGHTING = "sighting: 300 yd}";

  private static byte[] image(String format, int across, int down) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ImageIO.write(new BufferedImage(across, down, BufferedImage.TYPE_INT_RGB), format, out);
    return out.toByteArray();
  }

  private static String named(String file) {
    return Fixture.good()
        .marked(Fixture.ROUTE, SIGHTING, "sighting: 300 yd, picture: " + Fixture.HERE + file + "}");
  }

  private static Fixture with(String file) {
    return Fixture.good().put(Fixture.ROUTE, named(file).replace(Fixture.HERE, ""));
  }

  private static void refused(Fixture fixture, String file, String says) {
    Reading<PackFile> reading = fixture.sources().pack(Fixture.PACK);
    assertThat(reading.found()).isEmpty();
    assertThat(reading.problems().text())
        .contains(Fixture.place(Fixture.ROUTE, named(file)))
        .contains(says);
  }

  @ParameterizedTest
  @ValueSource(strings = {"pictures/kiln.png", "pictures/kiln.jpg", "./pictures/../kiln.JPEG"})
  void aPictureIsMadeSmallAndKeptAsItWas(String file) throws IOException {
    String format = file.endsWith("png") ? "png" : "jpeg";
    byte[] bytes = image(format, 1200, 600);
    String kept = file.contains("..") ? "kiln.JPEG" : file;
    Fixture fixture = with(file).put("line/" + kept, bytes);
    PackFile pack = fixture.sources().pack(Fixture.PACK).found().orElseThrow();
    Picture picture = pack.pictures().find(file).orElseThrow();
    assertThat(picture.widthPx()).isEqualTo(354);
    assertThat(picture.heightPx()).isEqualTo(177);
    assertThat(picture.data()).startsWith("data:image/" + format + ";base64,");
    byte[] data = Base64.getDecoder().decode(picture.data().split(",", -1)[1]);
    assertThat(ImageIO.read(new ByteArrayInputStream(data)).getWidth()).isEqualTo(354);
    assertThat(pack.inputs()).contains(new Input(kept, bytes));
    assertThat(new Sources(name -> new SourceFiles.Bytes(new byte[0])).pack(pack.inputs()).found())
        .as("from what was kept")
        .map(PackFile::pictures)
        .contains(pack.pictures());
  }

  /** Where a signal and a station of the fixture have room for one. */
  @ParameterizedTest
  @ValueSource(strings = {SIGNAL, STATION})
  void aSignalOrAStationMayNameOneToo(String before) throws IOException {
    String key = "picture: " + Fixture.HERE + "kiln.png\n    ";
    String route = Fixture.good().marked(Fixture.ROUTE, before, key + before);
    Fixture fixture = Fixture.good().put(Fixture.ROUTE, route.replace(Fixture.HERE, ""));
    assertThat(fixture.sources().pack(Fixture.PACK).problems().text())
        .contains("the file kiln.png cannot be read: there is no such file")
        .contains(Fixture.place(Fixture.ROUTE, route));
    fixture.put("line/kiln.png", image("png", 90, 60));
    PackFile pack = fixture.sources().pack(Fixture.PACK).found().orElseThrow();
    assertThat(pack.pictures().find("kiln.png")).isPresent();
    assertThat(pack.inputs()).extracting(Input::name).contains("kiln.png");
  }

  @Test
  void withoutPicturesNothingIsRead() {
    PackFile pack = Fixture.good().sources().pack(Fixture.PACK).found().orElseThrow();
    assertThat(pack.pictures().all()).isEmpty();
    assertThat(pack.inputs()).extracting(Input::name).noneMatch(n -> n.endsWith("png"));
  }

  @Test
  void aPictureThatChangesIsReadAnew() throws IOException {
    Fixture fixture = with("kiln.png").put("line/kiln.png", image("png", 20, 20));
    Sources sources = fixture.sources();
    Picture before = sources.pack(Fixture.PACK).found().orElseThrow().pictures().all().get(0);
    fixture.put("line/kiln.png", image("png", 30, 20));
    Picture after = sources.pack(Fixture.PACK).found().orElseThrow().pictures().all().get(0);
    assertThat(List.of(before.widthPx(), after.widthPx())).containsExactly(20, 30);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"../kiln.png", "pictures/../../kiln.png", "/kiln.png", "kiln.gif", "kiln"})
  void thereIsNoWayOutOfTheFolder(String file) throws IOException {
    Fixture fixture = with(file).put("kiln.png", image("png", 9, 9));
    fixture.put("line/kiln.gif", image("gif", 9, 9)).put("line/kiln", image("png", 9, 9));
    refused(
        fixture,
        file,
        "the picture \"%s\" is not a PNG or JPEG file in the folder of the route".formatted(file));
  }

  @Test
  void oneThatIsNotThereIsNamed() {
    refused(
        with("kiln.png"), "kiln.png", "the file kiln.png cannot be read: there is no such file");
  }

  @Test
  void whatIsNoPictureOrTooLargeIsRefused() throws IOException {
    String says =
        "the picture \"kiln.png\" cannot be read as what its name says, or it is too large";
    byte[] text = "no picture at all".getBytes(StandardCharsets.UTF_8);
    byte[] whole = image("png", 40, 40);
    List<byte[]> wrong =
        List.of(
            text,
            new byte[0],
            image("jpeg", 9, 9),
            image("png", 4001, 1),
            java.util.Arrays.copyOf(whole, whole.length / 2),
            java.util.Arrays.copyOf(whole, 2 * 1024 * 1024 + 1));
    for (byte[] bytes : wrong) {
      refused(with("kiln.png").put("line/kiln.png", bytes), "kiln.png", says);
    }
  }
}
