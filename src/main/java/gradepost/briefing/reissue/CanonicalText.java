package gradepost.briefing.reissue;

import java.lang.reflect.RecordComponent;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Values as one text that depends on the values alone: not on the names of a record or of its
 * components, nor on how Java writes a number. A record is its values in their order, in round
 * brackets; a list is in square ones; texts are in quotes. Numbers that are not whole only draw
 * charts, and are taken to one decimal.
 *
 * <p>Whoever changes the order, the rounding or the notation increases {@link Sheets#FORMAT}.
 */
final class CanonicalText {

  static String of(Object... values) {
    return Arrays.stream(values).map(CanonicalText::one).collect(Collectors.joining("\n"));
  }

  private static String one(Object value) {
    if (value instanceof String text) {
      return '"' + text.replace("\\", "\\\\").replace("\"", "\\\"").replace("\n", "\\n") + '"';
    } else if (value instanceof Double number) {
      return new BigDecimal(number).setScale(1, RoundingMode.HALF_EVEN).toPlainString();
    } else if (value instanceof Integer || value instanceof Long || value instanceof Boolean) {
      return value.toString();
    } else if (value instanceof Enum<?> word) {
      return word.name();
    } else if (value instanceof Optional<?> one) {
      return list(one.stream());
    } else if (value instanceof List<?> list) {
      return list(list.stream());
    } else if (value instanceof double[] numbers) {
      return list(Arrays.stream(numbers).boxed());
    } else if (value instanceof Record record) {
      return record(record);
    }
    // A set or a map has no order that two runs share.
    throw new IllegalArgumentException("no canonical text for a " + value.getClass());
  }

  private static String list(Stream<?> values) {
    return values.map(CanonicalText::one).collect(Collectors.joining(",", "[", "]"));
  }

  private static String record(Record record) {
    return Arrays.stream(record.getClass().getRecordComponents())
        .map(c -> one(value(record, c)))
        .collect(Collectors.joining(",", "(", ")"));
  }

  private static Object value(Record record, RecordComponent component) {
    try {
      return component.getAccessor().invoke(record);
    } catch (ReflectiveOperationException e) {
      throw new IllegalArgumentException("a record of " + record.getClass() + " is not public", e);
    }
  }

  private CanonicalText() {}
}
