package gradepost.app.issue;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.Changes;
import gradepost.app.store.Disk;
import gradepost.briefing.Change;
import gradepost.briefing.Messages;
import gradepost.reissue.register.Entry;
import gradepost.source.file.Input;
import gradepost.source.pack.PackFile;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * A picture that comes, changes or goes makes its sheet new, and the paper says of what: nobody has
 * to sign for it.
 */
@Tag("slow")
class ChangedPicturesTest extends Changes {
  private final DifferenceFinder finder = new DifferenceFinder(Messages.english());

  private static byte[] image(int across) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ImageIO.write(new BufferedImage(across, 60, BufferedImage.TYPE_INT_RGB), "png", out);
    return out.toByteArray();
  }

  /** As a clerk names it in the route, beside the file. */
  private PackFile drawn(PackFile pack, String file, byte[] picture) throws IOException {
    List<Input> inputs = new ArrayList<>();
    for (Input input : pack.inputs()) {
      String text = new String(input.bytes(), StandardCharsets.UTF_8);
      String edited =
          text.replace("code: BRI", "code: BRI\n    picture: " + file)
              .replace("number: 1\n  issued", "number: 2\n  issued");
      inputs.add(new Input(input.name(), edited.getBytes(StandardCharsets.UTF_8)));
    }
    inputs.add(new Input(file, picture));
    return good(Disk.sources().pack(inputs));
  }

  private Differences between(PackFile before, PackFile now) throws Exception {
    return finder.of(packs.get(0), now, Optional.of(new LastIssue(before, List.of())));
  }

  private static List<String> said(Differences found) {
    return found.papers().get(0).changes().stream()
        .map(c -> c.kind() + ", " + c.place() + ": " + c.text())
        .toList();
  }

  private static List<String> renewed(Differences found) {
    return found.sheets().stream().filter(s -> s.since() > 1).map(Entry.Sheet::title).toList();
  }

  @Test
  void onePictureIsNamedAsNewAsAnotherOrAsTakenOut() throws Exception {
    PackFile none = pack(packs.get(0));
    PackFile one = drawn(none, "brink.png", image(90));
    PackFile other = drawn(none, "brink.png", image(120));
    PackFile renamed = drawn(none, "brink-station.png", image(90));

    Differences added = between(none, one);
    assertThat(said(added)).containsExactly("picture, Brink: printed for the first time");
    assertThat(added.any()).isTrue();
    assertThat(renewed(added)).hasSize(1).allMatch(title -> title.startsWith("Line"));
    assertThat(added.papers().get(0).comparison().isEmpty()).as("nobody signs for it").isTrue();
    assertThat(added.papers().get(0).changes()).noneMatch(Change::onSlip);

    assertThat(said(between(one, other)))
        .containsExactly("picture, Brink: another picture is printed");
    assertThat(said(between(one, renamed))).as("the same under another name").isEmpty();
    assertThat(said(between(other, none)))
        .containsExactly("picture, Brink: taken out: no picture is printed");
  }
}
