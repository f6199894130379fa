package gradepost.source.file;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The inputs of a pack that were kept: read under the names that the pack has for them. */
public final class MemoryFiles implements SourceFiles {
  private final Map<String, byte[]> files = new LinkedHashMap<>();

  public MemoryFiles(List<Input> inputs) {
    inputs.forEach(i -> files.put(i.name(), i.bytes()));
  }

  @Override
  public Content read(String name) {
    return Optional.ofNullable(files.get(name))
        .<Content>map(Bytes::new)
        .orElseGet(() -> new Unreadable(FileMistakes.NOT_KEPT));
  }
}
