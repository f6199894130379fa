package gradepost.render.chart;

import com.google.zxing.WriterException;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import com.google.zxing.qrcode.encoder.ByteMatrix;
import com.google.zxing.qrcode.encoder.Encoder;
import gradepost.briefing.chart.CodeChart;

/** A QR code, black on paper whatever the page's colours, with its quiet zone. */
final class CodeDrawing implements Drawing {
  private static final double SIZE = 84;
  private static final int QUIET = 4;
  private final ByteMatrix cells;

  CodeDrawing(CodeChart chart) {
    try {
      cells = Encoder.encode(chart.text(), ErrorCorrectionLevel.M).getMatrix();
    } catch (WriterException e) {
      throw new IllegalArgumentException("no code holds " + chart.text(), e);
    }
  }

  @Override
  public double width() {
    return SIZE;
  }

  @Override
  public double height() {
    return SIZE;
  }

  @Override
  public void draw(Canvas canvas) {
    double cell = SIZE / (cells.getWidth() + 2 * QUIET);
    for (int row = 0; row < cells.getHeight(); row++) {
      int column = 0;
      while (column < cells.getWidth()) {
        int start = column;
        while (column < cells.getWidth() && cells.get(column, row) == 1) {
          column++;
        }
        if (column > start) {
          canvas.box(
              (start + QUIET) * cell,
              (row + QUIET) * cell,
              (column - start) * cell,
              cell,
              Canvas.Ink.BLACK);
        }
        column++;
      }
    }
  }
}
