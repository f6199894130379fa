package gradepost.app.issue;

import gradepost.app.store.Digest;
import gradepost.app.store.Disk;
import gradepost.app.store.IoErrorText;
import gradepost.app.store.Paper;
import gradepost.briefing.Briefing;
import gradepost.briefing.CabCards;
import gradepost.briefing.Messages;
import gradepost.briefing.Printable;
import gradepost.briefing.Wall;
import gradepost.render.Renderer;
import gradepost.render.TemplateSource;
import gradepost.render.chart.TemplateFault;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.ForkJoinTask;

/** Both faces of a briefing, by the depot's templates where there are any. */
public final class Layout {
  private static final List<String> TEMPLATES =
      List.of(
          "addendum.ftlh",
          "cards.ftlh",
          "cover.ftlh",
          "labels.ftlh",
          "line.ftlh",
          "looked.ftlh",
          "macros.ftlh",
          "office.ftlh",
          "pack.ftlh",
          "paper.css",
          "plate.ftlh",
          "reference.ftlh",
          "reissue.ftlh",
          "road.ftlh",
          "screen.css",
          "seldom.ftlh",
          "signoff.css",
          "signoff.ftlh",
          "supplement.ftlh",
          "wall.ftlh");
  private static final int LARGEST_MB = 1;
  private final Messages messages = Messages.english();
  private final Renderer renderer;
  private final String digest;

  public Layout(Optional<Path> folder) throws IOException {
    this(source(folder));
    if (folder.isPresent()) {
      look(texts(folder.get()));
    }
  }

  /**
   * By a depot's own templates, wherever they lie.
   *
   * @param texts of the templates that are the depot's own, by their names
   */
  public Layout(Map<String, String> texts) throws IOException {
    this(own(texts).orElse(TemplateSource.bundled()));
    look(texts);
  }

  private Layout(TemplateSource source) throws IOException {
    renderer = new Renderer(source, messages);
    digest = digest(source, messages);
  }

  /**
   * Refuses a depot's own templates that cannot be used, before there is anything to lay out: what
   * they are, and what they would load from outside the paper.
   *
   * @param folder empty where there are none
   */
  public static void requireFit(Optional<Path> folder) throws IOException {
    if (folder.isPresent()) {
      new Layout(folder);
    }
  }

  private void look(Map<String, String> texts) throws IOException {
    for (Map.Entry<String, String> each : texts.entrySet()) {
      renderer.look(each.getKey(), each.getValue());
    }
  }

  private static TemplateSource source(Optional<Path> folder) throws IOException {
    if (folder.isPresent()) {
      if (!Files.isDirectory(folder.get())) {
        throw new NotDirectoryException(folder.get().toString());
      }
      return own(folder.get()).orElse(TemplateSource.bundled());
    }
    return TemplateSource.bundled();
  }

  /** The texts of the templates in a depot's folder, by their names. */
  public static Map<String, String> texts(Path folder) throws IOException {
    Map<String, String> texts = new TreeMap<>();
    TemplateSource own = own(folder);
    for (String name : TEMPLATES) {
      own.text(name).ifPresent(text -> texts.put(name, text));
    }
    return texts;
  }

  /** The texts that it writes. */
  public Messages messages() {
    return messages;
  }

  /** What the look of a paper hangs on beside the program: templates and texts, as a digest. */
  String digest() {
    return digest;
  }

  private static String digest(TemplateSource source, Messages messages) throws IOException {
    StringBuilder all = new StringBuilder();
    for (String name : TEMPLATES) {
      all.append(name).append('\0').append(source.text(name).orElse("")).append('\0');
    }
    messages.keys().stream()
        .sorted()
        .forEach(k -> all.append(k).append('=').append(messages.raw(k)).append('\0'));
    return Digest.of(all.toString().getBytes(StandardCharsets.UTF_8)).substring(0, 12);
  }

  /** A PDF alone. */
  public Paper pdf(String stem, Printable document) throws IOException {
    ByteArrayOutputStream pdf = new ByteArrayOutputStream();
    renderer.pdf(document, pdf);
    return new Paper(stem + ".pdf", pdf.toByteArray());
  }

  /** Single cards, and the sheets that they are cut from. */
  List<Paper> cards(String stem, CabCards cards) throws IOException {
    byte[] single = renderer.cards(cards);
    ByteArrayOutputStream sheets = new ByteArrayOutputStream();
    renderer.cut(cards, single, sheets);
    return List.of(
        new Paper(stem + ".pdf", single), new Paper(stem + "-to-cut.pdf", sheets.toByteArray()));
  }

  /** The road sheets in A3. */
  Paper wall(String stem, Briefing briefing) throws IOException {
    ByteArrayOutputStream pdf = new ByteArrayOutputStream();
    String title =
        messages.text("wall.title", briefing.cover().heading(), briefing.issue().number());
    renderer.enlarged(Wall.of(briefing, title), pdf);
    return new Paper(stem + ".pdf", pdf.toByteArray());
  }

  /** PDF and HTML; the latter is made by another core where one is idle. */
  public List<Paper> papers(String stem, Printable briefing) throws IOException {
    ForkJoinTask<Paper> html = ForkJoinTask.adapt(() -> unchecked(stem, briefing)).fork();
    try {
      Paper pdf = pdf(stem, briefing);
      return List.of(pdf, html.join());
    } catch (UncheckedIOException e) {
      throw e.getCause();
    } finally {
      html.quietlyJoin();
    }
  }

  private Paper unchecked(String stem, Printable briefing) {
    try {
      return html(stem, briefing);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** An HTML page alone. */
  public Paper html(String stem, Printable briefing) throws IOException {
    ByteArrayOutputStream html = new ByteArrayOutputStream();
    renderer.html(briefing, html);
    return new Paper(stem + ".html", html.toByteArray());
  }

  private static TemplateSource own(Map<String, String> texts) {
    return name -> Optional.ofNullable(texts.get(name));
  }

  private static TemplateSource own(Path folder) {
    return name -> {
      Path file = folder.resolve(name);
      if (!Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
        return Optional.empty();
      } else if (!file.toRealPath().startsWith(folder.toRealPath())) {
        throw new TemplateFault("the template %s is a link out of %s".formatted(name, folder));
      }
      try {
        return Optional.of(new String(Disk.bytes(file, LARGEST_MB), StandardCharsets.UTF_8));
      } catch (FileSystemException e) {
        throw new TemplateFault(IoErrorText.inWords(e), e);
      }
    };
  }
}
