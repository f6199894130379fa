package gradepost.source;

import gradepost.source.file.FileKind;
import gradepost.source.notice.NoticesTable;
import gradepost.source.pack.PackTable;
import gradepost.source.policy.PolicyTable;
import gradepost.source.route.Moment;
import gradepost.source.route.PlaceKind;
import gradepost.source.route.RouteTable;
import gradepost.source.stock.RotatingText;
import gradepost.source.stock.StockTable;
import gradepost.yaml.Common;
import gradepost.yaml.Forms;
import gradepost.yaml.HeightText;
import gradepost.yaml.Key;
import gradepost.yaml.ListOf;
import gradepost.yaml.ListOr;
import gradepost.yaml.ObjectSchema;
import gradepost.yaml.Scalar;
import gradepost.yaml.ValueType;
import gradepost.yaml.Variants;
import gradepost.yaml.WordMap;
import gradepost.yaml.WordOr;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * JSON Schemas (draft 07) of the five kinds of file, made from the key tables by which they are
 * read: what the reader takes, the schema takes. The schema takes more, since it knows neither the
 * route nor what one key demands of another.
 */
public final class Schemas {
  private static final String PLACE = "#/definitions/place";

  /** As a tree of maps, lists and texts, in the order of the key tables. */
  public static Map<String, Object> of(FileKind kind) {
    Map<String, Object> schema = new LinkedHashMap<>();
    schema.put("$schema", "http://json-schema.org/draft-07/schema#");
    schema.put("title", "gradepost: " + kind.word());
    schema.putAll(
        switch (kind) {
          case ROUTE -> kind(RouteTable.ROUTE);
          case STOCK -> kind(StockTable.STOCK);
          case POLICY -> kind(PolicyTable.POLICY);
          case RESTRICTIONS -> kind(NoticesTable.NOTICES_FILE);
          case PACK -> kind(PackTable.PACK);
        });
    if (String.valueOf(schema).contains(PLACE)) {
      Map<String, Object> place = new LinkedHashMap<>();
      place.put("anyOf", List.of(kind(PlaceKind.MILEAGE), kind(PlaceKind.SECTIONED)));
      schema.put("definitions", Map.of("place", place));
    }
    return schema;
  }

  private static Map<String, Object> kind(ValueType<?> kind) {
    if (kind instanceof Scalar<?> scalar) {
      return scalar(scalar);
    } else if (kind instanceof ObjectSchema<?> shape) {
      return shape(shape);
    } else if (kind instanceof ListOf<?> list) {
      Map<String, Object> schema = type("array");
      schema.put("items", kind(list.element()));
      schema.put("minItems", list.least());
      schema.put("maxItems", list.most());
      return schema;
    } else if (kind instanceof Variants<?> variants) {
      return variants(variants);
    } else if (kind instanceof WordOr<?> either) {
      Map<String, Object> schema = new LinkedHashMap<>();
      schema.put("anyOf", List.of(Map.of("const", either.word()), kind(either.other())));
      return schema;
    } else if (kind instanceof Forms<?> forms) {
      return anyOf(List.copyOf(forms.forms().values()));
    } else if (kind instanceof ListOr<?> list) {
      return anyOf(List.of(list.list(), list.shape()));
    } else if (kind instanceof WordMap map) {
      Map<String, Object> schema = type("object");
      schema.put("additionalProperties", scalar(Common.text(map.valueNoun())));
      return schema;
    } else if (kind instanceof PlaceKind) {
      Map<String, Object> schema = new LinkedHashMap<>();
      schema.put("$ref", PLACE);
      return schema;
    }
    return scalar(Common.text(kind.allowed()));
  }

  private static Map<String, Object> anyOf(List<ValueType<?>> kinds) {
    Map<String, Object> schema = new LinkedHashMap<>();
    schema.put("anyOf", kinds.stream().map(Schemas::kind).toList());
    return schema;
  }

  private static Map<String, Object> shape(ObjectSchema<?> shape) {
    Map<String, Object> properties = new LinkedHashMap<>();
    List<String> required = new ArrayList<>();
    for (Key<?> key : shape.keys()) {
      properties.put(key.name(), key(key));
      if (key.required()) {
        required.add(key.name());
      }
    }
    Map<String, Object> schema = type("object");
    schema.put("properties", properties);
    schema.put("required", required);
    schema.put("additionalProperties", false);
    return schema;
  }

  /**
   * A reference stands alone in draft 07, so what is said of the key stands beside it in a group.
   */
  private static Map<String, Object> key(Key<?> key) {
    Map<String, Object> schema = new LinkedHashMap<>();
    schema.put("description", description(key));
    Map<String, Object> value = kind(key.kind());
    if (value.containsKey("$ref")) {
      schema.put("allOf", List.of(value));
    } else {
      schema.putAll(value);
    }
    return schema;
  }

  private static String description(Key<?> key) {
    boolean group =
        key.kind() instanceof ObjectSchema
            || key.kind() instanceof Variants
            || key.kind() instanceof Forms;
    String value = group ? "" : " Value: " + short200(key.kind().allowed()) + ".";
    String absent =
        key.required()
            ? ""
            : key.fallbackText().isEmpty()
                ? " May be left out."
                : " If left out: " + key.fallbackText() + ".";
    return key.description() + value + absent;
  }

  private static String short200(String text) {
    return text.length() > 200 ? text.substring(0, 199) + "…" : text;
  }

  private static Map<String, Object> variants(Variants<?> variants) {
    List<Object> any = new ArrayList<>();
    variants
        .shapes()
        .forEach(
            (word, shape) -> {
              Map<String, Object> one = shape(shape);
              Map<String, Object> properties = new LinkedHashMap<>();
              shape.keys().forEach(k -> properties.put(k.name(), key(k)));
              Map<String, Object> which = new LinkedHashMap<>();
              which.put("const", word);
              properties.put(variants.key(), which);
              one.put("properties", properties);
              any.add(one);
            });
    Map<String, Object> schema = type("object");
    schema.put("required", List.of(variants.key()));
    schema.put("anyOf", any);
    return schema;
  }

  private static Map<String, Object> scalar(Scalar<?> scalar) {
    if (scalar instanceof Scalar.PlainNumber number) {
      Map<String, Object> schema = new LinkedHashMap<>();
      schema.put("type", List.of(number.whole() ? "integer" : "number", "string"));
      schema.put("minimum", number.least());
      schema.put("maximum", number.most());
      schema.put("pattern", "^\\s*\\d+(\\.\\d+)?\\s*$");
      return schema;
    } else if (scalar instanceof Scalar.Choice<?> choice) {
      Map<String, Object> schema = new LinkedHashMap<>();
      schema.put("enum", List.copyOf(choice.words().keySet()));
      return schema;
    } else if (scalar instanceof Scalar.Quantity<?> quantity) {
      return pattern(quantity.kind().pattern());
    } else if (scalar instanceof RotatingText) {
      return anyOf(List.of(RotatingText.SHARE, RotatingText.MASS));
    } else if (scalar instanceof HeightText) {
      return pattern("^\\s*[-\u2212]?\\s*\\d.*[a-z]\\s*$");
    } else if (scalar instanceof Moment.Day) {
      return pattern("^\\s*\\d{4}-\\d\\d-\\d\\d\\s*$");
    } else if (scalar instanceof Moment.DayAndHour) {
      return pattern("^\\s*\\d{4}-\\d\\d-\\d\\d \\d\\d:\\d\\d\\s*$");
    } else if (scalar instanceof Moment.OpenEnd) {
      return pattern("^\\s*(\\d{4}-\\d\\d-\\d\\d \\d\\d:\\d\\d|further notice)\\s*$");
    } else if (scalar instanceof Moment.Hours) {
      return pattern("^\\s*\\d\\d:\\d\\d to \\d\\d:\\d\\d\\s*$");
    }
    Map<String, Object> schema = new LinkedHashMap<>();
    schema.put("type", List.of("string", "number", "boolean"));
    schema.put("minLength", 1);
    schema.put("maxLength", Scalar.Text.LONGEST);
    return schema;
  }

  private static Map<String, Object> pattern(String pattern) {
    Map<String, Object> schema = type("string");
    schema.put("pattern", pattern);
    return schema;
  }

  private static Map<String, Object> type(String type) {
    Map<String, Object> schema = new LinkedHashMap<>();
    schema.put("type", type);
    return schema;
  }

  private Schemas() {}
}
