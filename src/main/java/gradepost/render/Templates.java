package gradepost.render;

import freemarker.core.HTMLOutputFormat;
import freemarker.core.ParseException;
import freemarker.core.TemplateClassResolver;
import freemarker.template.Configuration;
import freemarker.template.SimpleScalar;
import freemarker.template.TemplateException;
import freemarker.template.TemplateExceptionHandler;
import freemarker.template.TemplateHashModel;
import freemarker.template.TemplateMethodModelEx;
import freemarker.template.TemplateModel;
import freemarker.template.TemplateModelException;
import freemarker.template.TemplateScalarModel;
import gradepost.briefing.Messages;
import gradepost.briefing.Printable;
import gradepost.briefing.chart.Chart;
import gradepost.render.chart.TemplateFault;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TimeZone;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** Turns a briefing into markup. A template sees values, texts and charts; nothing else. */
final class Templates {
  private final TemplateSource source;
  private final Messages messages;
  private final Filling filling;
  private final Configuration configuration;
  private final ValueWrapper wrapper = new ValueWrapper();

  Templates(TemplateSource source, Messages messages) {
    this(source, messages, Filling.USUAL);
  }

  Templates(TemplateSource source, Messages messages, Filling filling) {
    this.source = source;
    this.filling = filling;
    this.messages = messages;
    configuration = new Configuration(Configuration.VERSION_2_3_34);
    configuration.setTemplateLoader(new SourceLoader(source));
    configuration.setTemplateUpdateDelayMilliseconds(Long.MAX_VALUE);
    configuration.setLocalizedLookup(false);
    configuration.setDefaultEncoding(StandardCharsets.UTF_8.name());
    configuration.setOutputFormat(HTMLOutputFormat.INSTANCE);
    configuration.setRecognizeStandardFileExtensions(true);
    configuration.setNewBuiltinClassResolver(TemplateClassResolver.ALLOWS_NOTHING_RESOLVER);
    configuration.setAPIBuiltinEnabled(false);
    configuration.setObjectWrapper(wrapper);
    configuration.setLocale(Locale.ROOT);
    configuration.setTimeZone(TimeZone.getTimeZone("UTC"));
    configuration.setNumberFormat("computer");
    configuration.setTemplateExceptionHandler(TemplateExceptionHandler.RETHROW_HANDLER);
    configuration.setLogTemplateExceptions(false);
    configuration.setWrapUncheckedExceptions(true);
  }

  /** Refuses a file that cannot be read as a template or would load from outside the paper. */
  void look(String name, String text) throws IOException {
    TemplateLook.at(name, text);
    if (!name.endsWith(".css")) {
      try {
        configuration.getTemplate(name);
      } catch (ParseException e) {
        throw new TemplateFault(Filling.oneLine(String.valueOf(e.getMessage())), e);
      }
    }
  }

  /**
   * @param face "paper" or "screen": names the style sheet and is shown to the templates
   * @param draw makes the markup that stands for a chart
   */
  String markup(Printable briefing, String face, Function<Chart, String> draw) throws IOException {
    Map<String, TemplateModel> root = new HashMap<>();
    String css =
        source
            .text(face + ".css")
            .orElseThrow(() -> new IOException("no style sheet " + face + ".css"));
    try {
      put(root, "doc", briefing);
      put(root, "face", face);
      root.put("css", HTMLOutputFormat.INSTANCE.fromMarkup(css));
      root.put("m", (TemplateMethodModelEx) this::message);
      root.put("draw", (TemplateMethodModelEx) arguments -> drawn(arguments, draw));
      TemplateHashModel model =
          new TemplateHashModel() {
            @Override
            public @Nullable TemplateModel get(String key) {
              return root.get(key);
            }

            @Override
            public boolean isEmpty() {
              return false;
            }
          };
      String name = briefing.template();
      return filling.of(name, () -> configuration.getTemplate(name), model);
    } catch (TemplateException e) {
      throw new TemplateFault(Filling.oneLine(e.getMessageWithoutStackTop()), e);
    }
  }

  private void put(Map<String, TemplateModel> root, String key, Object value)
      throws TemplateModelException {
    TemplateModel model = wrapper.wrap(value);
    if (model != null) {
      root.put(key, model);
    }
  }

  private Object message(List<?> arguments) throws TemplateModelException {
    Object[] holes = new Object[Math.max(0, arguments.size() - 1)];
    for (int i = 0; i < holes.length; i++) {
      holes[i] = ((TemplateScalarModel) arguments.get(i + 1)).getAsString();
    }
    String key = ((TemplateScalarModel) arguments.get(0)).getAsString();
    try {
      return new SimpleScalar(messages.text(key, holes));
    } catch (IllegalArgumentException e) {
      throw new TemplateModelException(e.getMessage(), e);
    }
  }

  private Object drawn(List<?> arguments, Function<Chart, String> draw)
      throws TemplateModelException {
    if (arguments.size() == 1
        && arguments.get(0) instanceof ValueWrapper.RecordModel model
        && model.value() instanceof Chart chart) {
      return HTMLOutputFormat.INSTANCE.fromMarkup(draw.apply(chart));
    }
    throw new TemplateModelException("draw wants a chart");
  }
}
