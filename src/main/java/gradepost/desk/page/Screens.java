package gradepost.desk.page;

import freemarker.cache.ClassTemplateLoader;
import freemarker.core.HTMLOutputFormat;
import freemarker.core.TemplateClassResolver;
import freemarker.template.Configuration;
import freemarker.template.DefaultObjectWrapper;
import freemarker.template.DefaultObjectWrapperBuilder;
import freemarker.template.TemplateException;
import freemarker.template.TemplateExceptionHandler;
import gradepost.reissue.register.Account;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Fills the templates of pages. Whatever stands in a value is shown as text, never as markup. */
public final class Screens {
  private final Configuration configuration;

  public Screens() {
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
  public void show(Context ctx, String name, String title, Map<String, ?> model) {
    Map<String, Object> root = new HashMap<>(model);
    root.put("page", name);
    root.put("title", title);
    Optional<Session> session = Session.perhaps(ctx);
    Optional<Account> account = session.flatMap(Session::account);
    root.put("token", session.map(Session::token).orElse(""));
    root.put("who", account.map(Account::name).orElse(""));
    root.put("by", session.map(s -> s.by(ctx)).orElse(""));
    root.put(
        "may",
        new Rights.For(
            account.filter(Account::first).isPresent()
                ? Set.of()
                : session.map(Session::roles).orElse(Set.of())));
    StringWriter out = new StringWriter();
    try {
      configuration.getTemplate(name + ".ftlh").process(root, out);
    } catch (IOException | TemplateException e) {
      throw new IllegalStateException(e);
    }
    ctx.contentType("text/html; charset=utf-8").result(out.toString());
  }
}
