package gradepost.source.pack;

import gradepost.pack.Picture;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Base64;
import java.util.Iterator;
import java.util.Locale;
import java.util.Optional;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.MemoryCacheImageInputStream;

/** The formats of pictures, and how one is made small for print: the same file, the same dots. */
enum PictureFormat {
  PNG("png"),
  JPEG("jpeg");

  /** Dots each way: more are not decoded, so that a small file cannot fill the memory. */
  static final int MOST_DOTS = 4000;

  /** 45 mm at 200 dots an inch, each way. */
  static final int PRINTED_DOTS = 354;

  private final String word;

  PictureFormat(String word) {
    this.word = word;
  }

  /** By the end of the file's name. */
  static Optional<PictureFormat> of(String file) {
    String name = file.toLowerCase(Locale.ROOT);
    return name.endsWith(".png")
        ? Optional.of(PNG)
        : name.endsWith(".jpg") || name.endsWith(".jpeg") ? Optional.of(JPEG) : Optional.empty();
  }

  /** The picture as it is printed; empty where the bytes are none of this format, or too large. */
  Optional<Picture> shrunk(String file, byte[] bytes) {
    Iterator<ImageReader> readers = ImageIO.getImageReadersByFormatName(word);
    if (!readers.hasNext()) {
      return Optional.empty();
    }
    ImageReader reader = readers.next();
    try (MemoryCacheImageInputStream in =
        new MemoryCacheImageInputStream(new ByteArrayInputStream(bytes))) {
      reader.setInput(in, true, true);
      if (reader.getWidth(0) > MOST_DOTS || reader.getHeight(0) > MOST_DOTS) {
        return Optional.empty();
      }
      BufferedImage small = small(reader.read(0));
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      ImageIO.write(small, word, out);
      String data = Base64.getEncoder().encodeToString(out.toByteArray());
      String address = "data:image/" + word + ";base64," + data;
      return Optional.of(new Picture(file, address, small.getWidth(), small.getHeight()));
    } catch (IOException | RuntimeException e) {
      // The decoders answer a damaged file with either.
      return Optional.empty();
    } finally {
      reader.dispose();
    }
  }

  /**
   * On white, without what else the file holds, halved until it is nearly as small as it is to be.
   */
  private static BufferedImage small(BufferedImage whole) {
    BufferedImage now = whole;
    double scale =
        Math.min(1, PRINTED_DOTS / (double) Math.max(whole.getWidth(), whole.getHeight()));
    int width = (int) Math.max(1, Math.round(whole.getWidth() * scale));
    int height = (int) Math.max(1, Math.round(whole.getHeight() * scale));
    while (now.getWidth() > 2 * width && now.getHeight() > 2 * height) {
      now = drawn(now, now.getWidth() / 2, now.getHeight() / 2);
    }
    return drawn(now, width, height);
  }

  private static BufferedImage drawn(BufferedImage image, int width, int height) {
    BufferedImage out = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Graphics2D pen = out.createGraphics();
    pen.setRenderingHint(
        RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
    pen.drawImage(image, 0, 0, width, height, Color.WHITE, null);
    pen.dispose();
    return out;
  }
}
