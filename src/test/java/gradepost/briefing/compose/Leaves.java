package gradepost.briefing.compose;

import gradepost.plan.Application;
import gradepost.plan.Command;
import java.lang.reflect.Constructor;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;

/**
 * Every number, text and cause of a point in a tree of records, and the same tree with another one
 * in its place.
 */
final class Leaves {
  /**
   * One of them.
   *
   * @param name of the components on the way to it
   * @param with the whole tree with another value there
   */
  record Leaf(String name, Object value, Function<Object, Object> with) {}

  /**
   * @param into whether the components of a record are looked at
   */
  static List<Leaf> of(Object root, Predicate<Class<?>> into) {
    if (root instanceof Double
        || root instanceof Long
        || root instanceof String
        || root instanceof Application.SetBy
        || root instanceof Command.Stage) {
      return List.of(new Leaf("", root, v -> v));
    } else if (root instanceof Optional<?> one) {
      return one.map(x -> under("", of(x, into), Optional::of)).orElse(List.of());
    } else if (root instanceof List<?> list) {
      List<Leaf> out = new ArrayList<>();
      for (int i = 0; i < list.size(); i++) {
        int index = i;
        out.addAll(under("[" + i + "]", of(list.get(i), into), v -> replaced(list, index, v)));
      }
      return out;
    } else if (root instanceof Record record && into.test(record.getClass())) {
      return record(record, into);
    }
    return List.of();
  }

  private static List<Leaf> record(Record record, Predicate<Class<?>> into) {
    List<Leaf> out = new ArrayList<>();
    RecordComponent[] components = record.getClass().getRecordComponents();
    Object[] values = Arrays.stream(components).map(c -> value(record, c)).toArray();
    for (int i = 0; i < values.length; i++) {
      int index = i;
      out.addAll(
          under(
              "." + components[i].getName(),
              of(values[i], into),
              v -> made(record.getClass(), components, replaced(values, index, v))));
    }
    return out;
  }

  private static List<Leaf> under(
      String name, List<Leaf> leaves, Function<Object, Object> outside) {
    return leaves.stream()
        .map(l -> new Leaf(name + l.name(), l.value(), l.with().andThen(outside)))
        .toList();
  }

  private static List<Object> replaced(List<?> list, int index, Object value) {
    List<Object> out = new ArrayList<>(list);
    out.set(index, value);
    return out;
  }

  private static Object[] replaced(Object[] values, int index, Object value) {
    Object[] out = values.clone();
    out[index] = value;
    return out;
  }

  private static Object value(Record record, RecordComponent component) {
    try {
      component.getAccessor().setAccessible(true);
      return component.getAccessor().invoke(record);
    } catch (ReflectiveOperationException e) {
      throw new LinkageError(e.getMessage(), e);
    }
  }

  private static Object made(Class<?> type, RecordComponent[] components, Object[] values) {
    try {
      Constructor<?> made =
          type.getDeclaredConstructor(
              Arrays.stream(components).map(RecordComponent::getType).toArray(Class[]::new));
      made.setAccessible(true);
      return made.newInstance(values);
    } catch (InvocationTargetException e) {
      throw new IllegalArgumentException(e.getCause());
    } catch (ReflectiveOperationException e) {
      throw new LinkageError(e.getMessage(), e);
    }
  }

  private Leaves() {}
}
