package gradepost.desk;

import freemarker.cache.ClassTemplateLoader;
import freemarker.core.HTMLOutputFormat;
import freemarker.core.TemplateClassResolver;
import freemarker.template.Configuration;
import freemarker.template.DefaultObjectWrapper;
import freemarker.template.DefaultObjectWrapperBuilder;
import freemarker.template.TemplateException;
import freemarker.template.TemplateExceptionHandler;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;

/** Fills the templates of pages. Whatever stands in a value is shown as text, never as markup. */
final class Screens {
  private final Configuration configuration;

  Screens() {
    configuration = new Configuration(Configuration.VERSION_2_3_34);
    configuration.setTemplateLoader(
        new ClassTemplateLoader(Screens.class, "/gradepost/templates/desk"));
    configuration.setTemplateUpdateDelayMilliseconds(Long.MAX_VALUE);
    configuration.setLocalizedLookup(false);
    configuration.setDefaultEncoding(StandardCharsets.UTF_8.name());
    configuration.setURLEscapingCharset(StandardCharsets.UTF_8.name());
    configuration.setOutputFormat(HTMLOutputFormat.INSTANCE);
    configuration.setRecognizeStandardFileExtensions(true);
    configuration.setNewBuiltinClassResolver(TemplateClassResolver.ALLOWS_NOTHING_RESOLVER);
    configuration.setAPIBuiltinEnabled(false);
    DefaultObjectWrapperBuilder wrapper =
        new DefaultObjectWrapperBuilder(Configuration.VERSION_2_3_34);
    wrapper.setExposeFields(false);
    DefaultObjectWrapper built = wrapper.build();
    configuration.setObjectWrapper(built);
    configuration.setLocale(Locale.ROOT);
    configuration.setNumberFormat("computer");
    configuration.setTemplateExceptionHandler(TemplateExceptionHandler.RETHROW_HANDLER);
    configuration.setLogTemplateExceptions(false);
  }

  /**
   * Answers with a page.
   *
   * @param name of its template, without ending; also which page is marked in the list of pages
   * @param title of the page
   * @param model what the template shows
   */
  void show(Context ctx, String name, String title, Map<String, ?> model) {
    Map<String, Object> root = new HashMap<>(model);
    root.put("page", name);
    root.put("title", title);
    StringWriter out = new StringWriter();
    try {
      configuration.getTemplate(name + ".ftlh").process(root, out);
    } catch (IOException | TemplateException e) {
      throw new IllegalStateException(e);
    }
    ctx.contentType("text/html; charset=utf-8").result(out.toString());
  }
}
