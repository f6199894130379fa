package gradepost.render;

import freemarker.template.ObjectWrapper;
import freemarker.template.SimpleNumber;
import freemarker.template.SimpleScalar;
import freemarker.template.TemplateBooleanModel;
import freemarker.template.TemplateHashModel;
import freemarker.template.TemplateModel;
import freemarker.template.TemplateModelException;
import freemarker.template.TemplateSequenceModel;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.RecordComponent;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;

/**
 * Shows a template the values of records and nothing else: no methods, no classes, no way to
 * anything that the briefing does not hold.
 */
final class ValueWrapper implements ObjectWrapper {
  private final Map<Class<?>, Map<String, Method>> components = new ConcurrentHashMap<>();

  /** A record as a template sees it. */
  final class RecordModel implements TemplateHashModel {
    private final Record value;

    private RecordModel(Record value) {
      this.value = value;
    }

    Record value() {
      return value;
    }

    @Override
    public @Nullable TemplateModel get(String name) throws TemplateModelException {
      Method accessor =
          components.computeIfAbsent(value.getClass(), ValueWrapper::accessors).get(name);
      if (accessor == null) {
        return null;
      }
      try {
        return wrap(accessor.invoke(value));
      } catch (IllegalAccessException | InvocationTargetException e) {
        throw new TemplateModelException("cannot read " + name, e);
      }
    }

    @Override
    public boolean isEmpty() {
      return false;
    }
  }

  private static Map<String, Method> accessors(Class<?> type) {
    Map<String, Method> out = new HashMap<>();
    for (RecordComponent component : type.getRecordComponents()) {
      out.put(component.getName(), component.getAccessor());
    }
    return out;
  }

  private record ListModel(List<?> list, ValueWrapper wrapper) implements TemplateSequenceModel {
    @Override
    public @Nullable TemplateModel get(int index) throws TemplateModelException {
      return index >= 0 && index < list.size() ? wrapper.wrap(list.get(index)) : null;
    }

    @Override
    public int size() {
      return list.size();
    }
  }

  @Override
  public @Nullable TemplateModel wrap(@Nullable Object value) throws TemplateModelException {
    if (value == null) {
      return null;
    } else if (value instanceof TemplateModel model) {
      return model;
    } else if (value instanceof String text) {
      return new SimpleScalar(text);
    } else if (value instanceof Boolean truth) {
      return truth ? TemplateBooleanModel.TRUE : TemplateBooleanModel.FALSE;
    } else if (value instanceof Number number) {
      return new SimpleNumber(number);
    } else if (value instanceof List<?> list) {
      return new ListModel(list, this);
    } else if (value instanceof Optional<?> maybe) {
      return wrap(maybe.orElse(null));
    } else if (value instanceof Enum<?> word) {
      return new SimpleScalar(word.name());
    } else if (value instanceof java.time.temporal.Temporal moment) {
      return new SimpleScalar(moment.toString());
    } else if (value instanceof Record record) {
      return new RecordModel(record);
    }
    throw new TemplateModelException(
        "a template is shown values only, not " + value.getClass().getSimpleName());
  }
}
