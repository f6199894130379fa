package gradepost.source;

import com.code_intelligence.jazzer.junit.FuzzTest;
import gradepost.source.pack.PackFile;
import gradepost.yaml.Reading;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Tag;

/**
 * Property, coverage-guided: any bytes in the place of any file are answered without an exception.
 * In the build the kept inputs run once; to look for new ones set {@code JAZZER_FUZZ=1} and run
 * this class.
 */
@Tag("slow")
class ReaderFuzzTest {

  /** The first byte says which file of the fixture the others stand for. */
  @FuzzTest(maxDuration = "10m")
  void anyBytesAreAnswered(byte[] data) {
    if (data.length == 0) {
      return;
    }
    Fixture fixture = Fixture.good();
    String file = Fixture.ALL.get(Byte.toUnsignedInt(data[0]) % Fixture.ALL.size());
    fixture.put(file, Arrays.copyOfRange(data, 1, data.length));
    Sources sources = fixture.sources();
    Reading<PackFile> reading = sources.pack(Fixture.PACK);
    if (reading.problems().hasErrors() == reading instanceof Reading.Good) {
      throw new IllegalStateException("an error and a value: " + reading.problems().text());
    }
    sources.check(file).text();
    RouteList[] parts = RouteList.values();
    RouteList part = parts[data.length % parts.length];
    new RouteCsv(Fixture.good(), Fixture.ROUTE)
        .imported(List.of(new RouteCsv.Table(part, "t.csv", data)));
  }
}
