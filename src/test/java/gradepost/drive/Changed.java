package gradepost.drive;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.task.Assignment;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.List;

/** A record with another value in one of its components. */
public final class Changed {

  /** The record changed in the component of this name. */
  public static <R extends Record> R in(R usual, String component, Object value) {
    try {
      List<Class<?>> types = new ArrayList<>();
      List<Object> values = new ArrayList<>();
      for (RecordComponent each : usual.getClass().getRecordComponents()) {
        types.add(each.getType());
        values.add(each.getName().equals(component) ? value : each.getAccessor().invoke(usual));
      }
      assertThat(values).contains(value);
      @SuppressWarnings("unchecked")
      Class<R> kind = (Class<R>) usual.getClass();
      return kind.getDeclaredConstructor(types.toArray(new Class<?>[0]))
          .newInstance(values.toArray());
    } catch (ReflectiveOperationException e) {
      throw new LinkageError("a record can be made anew", e);
    }
  }

  /** The assignment on a route that is changed in the component of this name. */
  public static Assignment route(Assignment usual, String component, Object value) {
    return in(usual, "route", in(usual.route(), component, value));
  }

  private Changed() {}
}
