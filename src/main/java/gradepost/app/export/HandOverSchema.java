package gradepost.app.export;

import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.time.temporal.Temporal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/**
 * The schema of a hand-over (JSON Schema, draft 07), made from the very types that {@link
 * RecordJson} writes. More may be written by a later program under the same version: what a schema
 * does not name, it allows.
 */
final class HandOverSchema {
  private final Map<String, Object> definitions = new TreeMap<>();
  private final Map<String, Class<?>> types = new HashMap<>();

  private HandOverSchema() {}

  /** The schema as a tree of maps, lists and texts. */
  static Map<String, Object> tree() {
    HandOverSchema schema = new HandOverSchema();
    Map<String, Object> root = new LinkedHashMap<>();
    root.put("$schema", "http://json-schema.org/draft-07/schema#");
    root.put("title", "gradepost " + HandOver.KIND + ", version " + HandOver.VERSION);
    root.put(
        "description",
        "All that was handed from one stage to the next, for one train in one direction. SI units,"
            + " named at the end of each key; places are distances run by the front of the train.");
    root.putAll(
        schema.group(
            HandOverFile.class,
            Map.of(
                "gradepost", Map.of("const", HandOver.KIND),
                "version", Map.of("const", HandOver.VERSION))));
    root.put("definitions", schema.definitions);
    return root;
  }

  private Object of(Type type) {
    if (type instanceof ParameterizedType generic) {
      return generic((Class<?>) generic.getRawType(), generic.getActualTypeArguments());
    } else if (type instanceof Class<?> plain) {
      return plain(plain);
    }
    throw new IllegalArgumentException("no schema of " + type);
  }

  /** A set is written as its texts. */
  private Object generic(Class<?> raw, Type[] of) {
    if (raw == Optional.class) {
      return of(of[0]);
    } else if (Map.class.isAssignableFrom(raw)) {
      return ordered("type", "object", "additionalProperties", of(of[1]));
    } else if (Set.class.isAssignableFrom(raw)) {
      return ordered("type", "array", "items", Map.of("type", "string"));
    } else if (Collection.class.isAssignableFrom(raw)) {
      return ordered("type", "array", "items", of(of[0]));
    }
    throw new IllegalArgumentException("no schema of " + raw);
  }

  private Object plain(Class<?> type) {
    if (type == double.class || type == Double.class) {
      return Map.of("type", "number");
    } else if (List.of(int.class, long.class, Integer.class, Long.class).contains(type)) {
      return Map.of("type", "integer");
    } else if (type == boolean.class || type == Boolean.class) {
      return Map.of("type", "boolean");
    } else if (type == double[].class) {
      return ordered("type", "array", "items", Map.of("type", "number"));
    } else if (type == String.class || Temporal.class.isAssignableFrom(type)) {
      return Map.of("type", "string");
    } else if (type.isEnum()) {
      return Map.of(
          "enum", Arrays.stream(type.getEnumConstants()).map(c -> ((Enum<?>) c).name()).toList());
    } else if (type.isRecord() || type.isSealed()) {
      return defined(type);
    }
    throw new IllegalArgumentException("no schema of " + type);
  }

  private Map<String, Object> defined(Class<?> type) {
    String name = called(type);
    if (types.putIfAbsent(name, type) == null) {
      definitions.put(name, type.isRecord() ? group(type, Map.of()) : cases(type));
    } else if (types.get(name) != type) {
      throw new IllegalArgumentException("two types are called " + name);
    }
    return Map.of("$ref", "#/definitions/" + name);
  }

  /** Without its package, and without the file itself. */
  private static String called(Class<?> type) {
    String name = type.getName().substring(type.getPackageName().length() + 1);
    return name.replace(HandOverFile.class.getSimpleName() + "$", "").replace('$', '.');
  }

  /** In the order of their names: that of the compiler hangs on what it compiles with them. */
  private Map<String, Object> cases(Class<?> family) {
    List<Object> cases = new ArrayList<>();
    Arrays.stream(family.getPermittedSubclasses())
        .sorted(Comparator.comparing(Class::getName))
        .forEach(each -> cases.add(defined(each)));
    return Map.of("anyOf", cases);
  }

  /**
   * A record.
   *
   * @param fixed components that have one value only
   */
  private Map<String, Object> group(Class<?> type, Map<String, Object> fixed) {
    Map<String, Object> properties = new LinkedHashMap<>();
    List<String> required = new ArrayList<>();
    if (RecordJson.isCase(type)) {
      properties.put("kind", Map.of("const", RecordJson.kind(type)));
      required.add("kind");
    }
    for (RecordComponent component : type.getRecordComponents()) {
      properties.put(
          component.getName(),
          fixed.getOrDefault(component.getName(), of(component.getGenericType())));
      if (component.getType() != Optional.class) {
        required.add(component.getName());
      }
    }
    return ordered("type", "object", "properties", properties, "required", required);
  }

  private static Map<String, Object> ordered(Object... keysAndValues) {
    Map<String, Object> out = new LinkedHashMap<>();
    for (int i = 0; i < keysAndValues.length; i += 2) {
      out.put((String) keysAndValues[i], keysAndValues[i + 1]);
    }
    return out;
  }
}
