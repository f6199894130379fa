package gradepost.app;

import gradepost.briefing.Briefing;
import gradepost.briefing.Messages;
import gradepost.render.Renderer;
import gradepost.render.TemplateSource;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** Both faces of a briefing, by the depot's templates where there are any. */
final class Layout {
  private final Messages messages = Messages.english();
  private final Renderer renderer;

  Layout(Optional<Path> folder) throws IOException {
    TemplateSource bundled = TemplateSource.bundled();
    TemplateSource source = bundled;
    if (folder.isPresent()) {
      if (!Files.isDirectory(folder.get())) {
        throw new NotDirectoryException(folder.get().toString());
      }
      source = own(folder.get()).orElse(bundled);
    }
    renderer = new Renderer(source, messages);
  }

  Messages messages() {
    return messages;
  }

  List<Paper> papers(String stem, Briefing briefing) throws IOException {
    ByteArrayOutputStream pdf = new ByteArrayOutputStream();
    renderer.pdf(briefing, pdf);
    ByteArrayOutputStream html = new ByteArrayOutputStream();
    renderer.html(briefing, html);
    return List.of(
        new Paper(stem + ".pdf", pdf.toByteArray()), new Paper(stem + ".html", html.toByteArray()));
  }

  private static TemplateSource own(Path folder) {
    return name -> {
      Path file = folder.resolve(name);
      return Files.isRegularFile(file) ? Optional.of(Files.readString(file)) : Optional.empty();
    };
  }
}
