package gradepost.source.ride;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.source.file.SourceFiles;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Property: what stands above the headings is known, however the lines above them begin. */
class RideHeadingTest {
  private static Optional<String> value(String text, String name) {
    SourceFiles files = file -> new SourceFiles.Bytes(text.getBytes(StandardCharsets.UTF_8));
    return RideFile.of(files, "ride.csv").heading().value(name);
  }

  @Test
  void itIsReadAsTheTableIs() {
    String rows = "time (s);distance (m);speed (mph)\r\n0;0;0\r\n1;9;20\r\n";
    assertThat(value("\uFEFFDriver;Ada Moor\r\n\r\nDirection;Down\r\n" + rows, "driver"))
        .contains("Ada Moor");
    assertThat(value("approach chart;7\r\nformation;4-car\r\n" + rows, "formation"))
        .contains("4-car");
    assertThat(value("the distance and speed of;a run\r\ndriver;B Fell\r\n" + rows, "driver"))
        .contains("B Fell");
    assertThat(value("distance, and speed, of a run\r\ndriver;E Tarn\r\n" + rows, "driver"))
        .contains("E Tarn");
    assertThat(value(rows + "driver;C Low\r\n", "driver")).isEmpty();
    assertThat(value("driver;D Hill\r\n", "driver")).isEmpty();
    assertThat(value("", "driver")).isEmpty();
  }
}
