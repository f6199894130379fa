package gradepost.render;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Line2D;
import java.awt.image.BufferedImage;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;

/** What the comparison of pictures sees, and what it forgives. */
class LikenessTest {
  private static BufferedImage picture(Consumer<Graphics2D> paint) {
    BufferedImage picture = new BufferedImage(200, 100, BufferedImage.TYPE_BYTE_GRAY);
    Graphics2D pen = picture.createGraphics();
    pen.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    pen.setColor(Color.WHITE);
    pen.fillRect(0, 0, 200, 100);
    pen.setColor(Color.BLACK);
    paint.accept(pen);
    pen.dispose();
    return picture;
  }

  private static void line(Graphics2D pen, double y) {
    pen.setStroke(new BasicStroke(0.8f));
    pen.draw(new Line2D.Double(20, y, 180, y + 7));
  }

  private static void word(Graphics2D pen, String word) {
    pen.setFont(new Font(Font.SANS_SERIF, Font.PLAIN, 11));
    pen.drawString(word, 20, 60);
  }

  @Test
  void aLineThatIsLostOrMovedShows() {
    BufferedImage kept = picture(pen -> line(pen, 40));
    assertThat(Likeness.of(picture(pen -> {}), kept).alike()).isFalse();
    assertThat(Likeness.of(picture(pen -> line(pen, 43)), kept).alike()).isFalse();
    assertThat(Likeness.of(picture(pen -> line(pen, 40)), kept).strange()).isZero();
  }

  @Test
  void anotherEdgeDoesNot() {
    BufferedImage kept = picture(pen -> line(pen, 40));
    assertThat(Likeness.of(picture(pen -> line(pen, 40.4)), kept).alike()).isTrue();
  }

  @Test
  void aLetterThatIsLostShows() {
    BufferedImage kept = picture(pen -> word(pen, "3m 58ch"));
    assertThat(Likeness.of(picture(pen -> word(pen, "3m 58c")), kept).alike()).isFalse();
    assertThat(Likeness.of(picture(pen -> word(pen, "3m 58ch")), kept).alike()).isTrue();
  }

  @Test
  void anotherSizeShows() {
    BufferedImage kept = picture(pen -> {});
    BufferedImage wider = new BufferedImage(210, 100, BufferedImage.TYPE_BYTE_GRAY);
    assertThat(Likeness.of(wider, kept).alike()).isFalse();
  }
}
