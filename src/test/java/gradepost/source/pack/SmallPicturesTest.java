package gradepost.source.pack;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.pack.Picture;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;

/** Property: a picture that is kept is the one that the file holds now, never an earlier one. */
class SmallPicturesTest {
  private final SmallPictures pictures = new SmallPictures();

  @Test
  void whatIsKeptIsWhatTheFileHolds() throws IOException {
    byte[] white = png(0xFFFFFF);
    byte[] grey = png(0x808080);
    Optional<Picture> first = pictures.of("kiln.png", PictureFormat.PNG, white);
    assertThat(first).isEqualTo(PictureFormat.PNG.shrunk("kiln.png", white)).isPresent();
    assertThat(pictures.of("kiln.png", PictureFormat.PNG, white.clone()).orElseThrow())
        .isSameAs(first.orElseThrow());
    assertThat(pictures.of("kiln.png", PictureFormat.PNG, grey))
        .isEqualTo(PictureFormat.PNG.shrunk("kiln.png", grey))
        .isNotEqualTo(first);
    assertThat(pictures.of("mill.png", PictureFormat.PNG, white).orElseThrow().file())
        .isEqualTo("mill.png");
    assertThat(pictures.of("kiln.jpg", PictureFormat.JPEG, white)).isEmpty();
    for (int i = 0; i < 100; i++) {
      byte[] next = png(i);
      assertThat(pictures.of("kiln.png", PictureFormat.PNG, next))
          .isEqualTo(PictureFormat.PNG.shrunk("kiln.png", next));
    }
  }

  private static byte[] png(int colour) throws IOException {
    BufferedImage image = new BufferedImage(400, 300, BufferedImage.TYPE_INT_RGB);
    for (int x = 0; x < 400; x++) {
      image.setRGB(x, 150, colour);
    }
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ImageIO.write(image, "png", out);
    return out.toByteArray();
  }
}
