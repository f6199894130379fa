package gradepost.desk;

import gradepost.desk.entry.DeskFault;
import gradepost.desk.page.DeskText;
import java.io.IOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;

/** The demo lines, copied to where they may be looked at and changed. */
public final class DemoFolder {
  private static final String LINES = "/gradepost/demo";

  /**
   * A folder of its own below the user's home. What lies there from another time is left as it is.
   *
   * @throws DeskFault where it cannot be written
   */
  public static Path copied() throws DeskFault {
    return copied(Path.of(System.getProperty("user.home", ".")).resolve("gradepost-demo"));
  }

  static Path copied(Path to) throws DeskFault {
    URL lines = Objects.requireNonNull(DemoFolder.class.getResource(LINES));
    try {
      URI uri = lines.toURI();
      if (uri.getScheme().equals("jar")) {
        try (FileSystem jar = FileSystems.newFileSystem(uri, Map.of())) {
          copy(jar.getPath(LINES), to);
        }
      } else {
        copy(Path.of(uri), to);
      }
      return to;
    } catch (IOException | URISyntaxException e) {
      throw new DeskFault(DeskText.WENT_WRONG.with(String.valueOf(e.getMessage())));
    }
  }

  private static void copy(Path from, Path to) throws IOException {
    try (Stream<Path> files = Files.walk(from)) {
      List<Path> all = files.filter(Files::isRegularFile).toList();
      for (Path file : all) {
        Path target = to.resolve(from.relativize(file).toString());
        if (!Files.exists(target)) {
          Files.createDirectories(Objects.requireNonNull(target.getParent()));
          Files.copy(file, target);
        }
      }
    }
  }

  private DemoFolder() {}
}
