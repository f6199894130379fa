package gradepost.app.export;

import gradepost.told.print.PrintedLength;
import gradepost.told.print.PrintedPlace;
import gradepost.told.print.PrintedPressure;
import gradepost.told.print.PrintedSpeed;
import gradepost.told.print.PrintedTime;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * The figures of what a driver is told, by kind: each place, speed, pressure, length, time and
 * number, under the record and component that holds it. What kinds there are is read from the types
 * themselves, so that a new one cannot be forgotten.
 */
final class FigureLists {
  private static final Set<Class<?>> FIGURES =
      Set.of(
          PrintedPlace.class,
          PrintedSpeed.class,
          PrintedPressure.class,
          PrintedLength.class,
          PrintedTime.class,
          long.class,
          int.class,
          Long.class,
          Integer.class);

  private final Map<String, List<String>> lists = new TreeMap<>();

  /** All kinds that a type can hold. */
  static Set<String> kindsOf(Class<?> type) {
    Set<String> out = new TreeSet<>();
    kinds(type, new HashSet<>(), out);
    return out;
  }

  private static void kinds(Class<?> type, Set<Class<?>> seen, Set<String> out) {
    if (!type.getPackageName().startsWith("gradepost.told") || !seen.add(type)) {
      return;
    }
    if (type.isSealed()) {
      for (Class<?> each : type.getPermittedSubclasses()) {
        kinds(each, seen, out);
      }
    }
    if (type.isRecord()) {
      for (RecordComponent component : type.getRecordComponents()) {
        Class<?> held = held(component.getGenericType());
        if (FIGURES.contains(held)) {
          out.add(kind(type, component));
        } else {
          kinds(held, seen, out);
        }
      }
    }
  }

  private static Class<?> held(Type type) {
    return type instanceof ParameterizedType of
        ? held(of.getActualTypeArguments()[0])
        : (Class<?>) type;
  }

  private static String kind(Class<?> type, RecordComponent component) {
    String name = type.getName().substring(type.getPackageName().length() + 1);
    return name.replace('$', '.') + "." + component.getName();
  }

  /** Those of a value, in its order. */
  static FigureLists of(Record value) {
    FigureLists out = new FigureLists();
    out.read(value);
    return out;
  }

  private void read(Object value) {
    if (value instanceof Optional<?> maybe) {
      maybe.ifPresent(this::read);
    } else if (value instanceof Collection<?> list) {
      list.forEach(this::read);
    } else if (value instanceof Record of
        && of.getClass().getPackageName().startsWith("gradepost.told")) {
      for (RecordComponent component : of.getClass().getRecordComponents()) {
        Object held = value(of, component);
        if (FIGURES.contains(held(component.getGenericType()))) {
          single(held).ifPresent(x -> add(kind(of.getClass(), component), text(x)));
        } else {
          read(held);
        }
      }
    }
  }

  private static Optional<?> single(Object held) {
    return held instanceof Optional<?> maybe ? maybe : Optional.of(held);
  }

  private static Object value(Record of, RecordComponent component) {
    try {
      return component.getAccessor().invoke(of);
    } catch (ReflectiveOperationException e) {
      throw new LinkageError(component.toString(), e);
    }
  }

  private static String text(Object figure) {
    if (figure instanceof PrintedPlace place) {
      return place.match(
          m -> m.steps() + (m.named() ? " " + m.section() : ""),
          l -> l.at().steps() + (l.at().named() ? " " + l.at().section() : ""),
          b -> "before " + b.ahead().number());
    } else if (figure instanceof PrintedSpeed speed) {
      return Long.toString(speed.number());
    } else if (figure instanceof PrintedPressure pressure) {
      return Long.toString(pressure.steps());
    } else if (figure instanceof PrintedLength length) {
      return Long.toString(length.number());
    } else if (figure instanceof PrintedTime time) {
      return Long.toString(time.seconds());
    }
    return figure.toString();
  }

  void add(String kind, Object figure) {
    lists.computeIfAbsent(kind, k -> new ArrayList<>()).add(figure.toString());
  }

  List<String> of(String kind) {
    return lists.getOrDefault(kind, List.of());
  }

  Set<String> kinds() {
    return lists.keySet();
  }
}
