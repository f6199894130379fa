package gradepost.app.export;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.reflect.RecordComponent;
import java.time.temporal.Temporal;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/**
 * Writes any value that is made of records, as it is: components by name, whose names carry the
 * unit. A case of a sealed type says which one it is under {@code kind}, unless it has a kind of
 * its own; what is absent is left out; sets and maps are sorted, so that the same value is the same
 * text.
 */
final class RecordJson {
  /** Kinds that a hand-over names otherwise than the code: a new name here is a new version. */
  private static final Map<String, String> KINDS =
      Map.of(
          "RocklCurveResistance", "RocklCurve",
          "DegreeCurveResistance", "DegreeCurve",
          "InverseRadiusCurveResistance", "InverseRadiusCurve",
          "NoCurveResistance", "NoCurveDrag");

  private final JsonGenerator json;

  RecordJson(JsonGenerator json) {
    this.json = json;
  }

  /** A record as a file, an object a line. */
  static byte[] bytes(Record all) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    DefaultPrettyPrinter lines =
        new DefaultPrettyPrinter().withObjectIndenter(new DefaultIndenter("  ", "\n"));
    try (JsonGenerator json = new JsonFactory().createGenerator(out)) {
      json.setPrettyPrinter(lines);
      new RecordJson(json).write(all);
    } catch (IOException e) {
      throw new UncheckedIOException("writing to memory", e);
    }
    return out.toByteArray();
  }

  void write(Object value) throws IOException {
    if (value instanceof Record r) {
      writeRecord(r);
    } else if (value instanceof Map<?, ?> map) {
      writeMap(map);
    } else if (value instanceof Set<?> set) {
      writeList(set.stream().map(String::valueOf).sorted().toList());
    } else if (value instanceof Collection<?> list) {
      writeList(list);
    } else if (value instanceof double[] numbers) {
      json.writeArray(numbers, 0, numbers.length);
    } else if (value instanceof Number number) {
      writeNumber(number);
    } else if (value instanceof Boolean yes) {
      json.writeBoolean(yes);
    } else if (value instanceof String || value instanceof Enum<?> || value instanceof Temporal) {
      json.writeString(value.toString());
    } else {
      throw new IllegalArgumentException("no way to write a " + value.getClass().getName());
    }
  }

  private void writeNumber(Number number) throws IOException {
    if (number instanceof Integer || number instanceof Long) {
      json.writeNumber(number.longValue());
      return;
    }
    double value = number.doubleValue();
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("a hand-over holds finite numbers only: " + value);
    }
    json.writeNumber(value);
  }

  /** What a case of a sealed type is called. */
  static String kind(Class<?> type) {
    return KINDS.getOrDefault(type.getSimpleName(), type.getSimpleName());
  }

  private void writeRecord(Record value) throws IOException {
    json.writeStartObject();
    boolean hasKind =
        Arrays.stream(value.getClass().getRecordComponents())
            .anyMatch(component -> component.getName().equals("kind"));
    if (isCase(value.getClass()) && !hasKind) {
      json.writeStringField("kind", kind(value.getClass()));
    }
    for (RecordComponent component : value.getClass().getRecordComponents()) {
      writeField(component.getName(), read(value, component));
    }
    json.writeEndObject();
  }

  /** Whether a record says which case of a sealed type it is. */
  static boolean isCase(Class<?> type) {
    return List.of(type.getInterfaces()).stream().anyMatch(Class::isSealed);
  }

  /** A linked map is in the order that its maker chose; any other is put in the order of keys. */
  private void writeMap(Map<?, ?> map) throws IOException {
    Map<String, Object> ordered =
        map instanceof LinkedHashMap ? new LinkedHashMap<>() : new TreeMap<>();
    map.forEach((key, value) -> ordered.put(String.valueOf(key), value));
    json.writeStartObject();
    for (Map.Entry<String, Object> entry : ordered.entrySet()) {
      writeField(entry.getKey(), entry.getValue());
    }
    json.writeEndObject();
  }

  private void writeField(String name, Object value) throws IOException {
    if (value instanceof Optional<?> maybe) {
      if (maybe.isPresent()) {
        writeField(name, maybe.get());
      }
      return;
    }
    json.writeFieldName(name);
    write(value);
  }

  private void writeList(Collection<?> list) throws IOException {
    json.writeStartArray();
    for (Object item : list) {
      write(item);
    }
    json.writeEndArray();
  }

  private static Object read(Record value, RecordComponent component) {
    try {
      var accessor = component.getAccessor();
      accessor.trySetAccessible();
      return accessor.invoke(value);
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException("a record of our own cannot be read: " + component, e);
    }
  }
}
