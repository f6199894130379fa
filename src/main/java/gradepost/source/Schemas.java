package gradepost.source;

import gradepost.source.file.FileKind;
import gradepost.source.notice.NoticesTable;
import gradepost.source.pack.PackTable;
import gradepost.source.policy.PolicyTable;
import gradepost.source.route.PlaceKind;
import gradepost.source.route.RouteTable;
import gradepost.source.stock.StockTable;
import gradepost.yaml.Common;
import gradepost.yaml.Forms;
import gradepost.yaml.Key;
import gradepost.yaml.ListOf;
import gradepost.yaml.ListOr;
import gradepost.yaml.ObjectSchema;
import gradepost.yaml.OwnKind;
import gradepost.yaml.OwnText;
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
  private static final String DEFINITIONS = "#/definitions/";
  private static final PlaceKind PLACE = new PlaceKind();
  private static final Kinds KINDS = new Kinds();
  private static final Texts TEXTS = new Texts();

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
    String place = PLACE.definition().orElseThrow();
    if (String.valueOf(schema).contains(DEFINITIONS + place)) {
      schema.put("definitions", Map.of(place, anyOf(PLACE.written())));
    }
    return schema;
  }

  private static Map<String, Object> kind(ValueType<?> kind) {
    return kind.match(KINDS);
  }

  /** How each kind of value looks. */
  private static final class Kinds implements ValueType.Cases<Map<String, Object>> {
    @Override
    public Map<String, Object> text(Scalar<?> kind) {
      return kind.matchText(TEXTS);
    }

    @Override
    public Map<String, Object> list(ListOf<?> kind) {
      Map<String, Object> schema = type("array");
      schema.put("items", kind(kind.element()));
      schema.put("minItems", kind.least());
      schema.put("maxItems", kind.most());
      return schema;
    }

    @Override
    public Map<String, Object> listOr(ListOr<?> kind) {
      return anyOf(List.of(kind.list(), kind.shape()));
    }

    @Override
    public Map<String, Object> group(ObjectSchema<?> kind) {
      return shape(kind);
    }

    @Override
    public Map<String, Object> variants(Variants<?> kind) {
      return Schemas.variants(kind);
    }

    @Override
    public Map<String, Object> forms(Forms<?> kind) {
      return anyOf(List.copyOf(kind.forms().values()));
    }

    @Override
    public Map<String, Object> wordOr(WordOr<?> kind) {
      Map<String, Object> schema = new LinkedHashMap<>();
      schema.put("anyOf", List.of(Map.of("const", kind.word()), kind(kind.other())));
      return schema;
    }

    @Override
    public Map<String, Object> wordMap(WordMap kind) {
      Map<String, Object> schema = type("object");
      schema.put("additionalProperties", kind(Common.text(kind.valueNoun())));
      return schema;
    }

    @Override
    public Map<String, Object> own(OwnKind<?> kind) {
      if (kind.definition().isPresent()) {
        Map<String, Object> schema = new LinkedHashMap<>();
        schema.put("$ref", DEFINITIONS + kind.definition().get());
        return schema;
      }
      return kind.written().size() == 1 ? kind(kind.written().get(0)) : anyOf(kind.written());
    }
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
    boolean group = key.kind().isGroup();
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

  /** How each kind of text looks. */
  private static final class Texts implements Scalar.Texts<Map<String, Object>> {
    @Override
    public Map<String, Object> words(Scalar.Text text) {
      Map<String, Object> schema = new LinkedHashMap<>();
      schema.put("type", List.of("string", "number", "boolean"));
      schema.put("minLength", 1);
      schema.put("maxLength", Scalar.Text.LONGEST);
      return schema;
    }

    @Override
    public Map<String, Object> number(Scalar.PlainNumber number) {
      Map<String, Object> schema = new LinkedHashMap<>();
      schema.put("type", List.of(number.whole() ? "integer" : "number", "string"));
      schema.put("minimum", number.least());
      schema.put("maximum", number.most());
      schema.put("pattern", "^\\s*\\d+(\\.\\d+)?\\s*$");
      return schema;
    }

    @Override
    public Map<String, Object> choice(Scalar.Choice<?> choice) {
      Map<String, Object> schema = new LinkedHashMap<>();
      schema.put("enum", List.copyOf(choice.words().keySet()));
      return schema;
    }

    @Override
    public Map<String, Object> quantity(Scalar.Quantity<?> quantity) {
      return pattern(quantity.kind().pattern());
    }

    @Override
    public Map<String, Object> own(OwnText<?> text) {
      if (text.patterns().size() == 1) {
        return pattern(text.patterns().get(0));
      }
      Map<String, Object> schema = new LinkedHashMap<>();
      schema.put("anyOf", text.patterns().stream().map(Schemas::pattern).toList());
      return schema;
    }
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
