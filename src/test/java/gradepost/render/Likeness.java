package gradepost.render;

import java.awt.image.BufferedImage;

/**
 * How far two grey pictures are alike for the eye: a dot is strange where nothing within a dot of
 * it in the other picture is about as dark. So another rasteriser's edges pass, and neither a line
 * that is lost or moved nor a letter that is another one.
 *
 * @param strange how many dots are
 */
record Likeness(int strange, BufferedImage difference) {
  /** Grey levels, of 255, that the edge of a letter or a hair line may be off by. */
  private static final int GREY = 80;

  /** A shortest dash is as many dots. */
  private static final int MOST = 4;

  boolean alike() {
    return strange <= MOST;
  }

  static Likeness of(BufferedImage one, BufferedImage other) {
    int width = Math.max(one.getWidth(), other.getWidth());
    int height = Math.max(one.getHeight(), other.getHeight());
    BufferedImage difference = new BufferedImage(width, height, BufferedImage.TYPE_BYTE_GRAY);
    int strange = 0;
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        int off = Math.max(off(one, other, x, y), off(other, one, x, y));
        difference.getRaster().setSample(x, y, 0, 255 - off);
        strange += off > GREY ? 1 : 0;
      }
    }
    return new Likeness(strange, difference);
  }

  /** How much darker or lighter a dot is than all that are near it in the other picture. */
  private static int off(BufferedImage from, BufferedImage to, int x, int y) {
    int grey = grey(from, x, y);
    int darkest = 255;
    int lightest = 0;
    for (int dy = -1; dy <= 1; dy++) {
      for (int dx = -1; dx <= 1; dx++) {
        int near = grey(to, x + dx, y + dy);
        darkest = Math.min(darkest, near);
        lightest = Math.max(lightest, near);
      }
    }
    return Math.max(0, Math.max(darkest - grey, grey - lightest));
  }

  /** Off the picture it is black on one and white on the other: a size that differs shows. */
  private static int grey(BufferedImage picture, int x, int y) {
    boolean on = x >= 0 && y >= 0 && x < picture.getWidth() && y < picture.getHeight();
    return on ? picture.getRaster().getSample(x, y, 0) : 255;
  }
}
