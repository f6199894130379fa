package gradepost.app.store;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import gradepost.reissue.register.Dump;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.RegisterException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;

/**
 * Moves a register, its archive and a folder of data to another place. A backup is a ZIP file with
 * the digest of each file in it, in the form that {@code sha256sum} reads. It is restored whole,
 * and only where nothing of it is yet; the register may then be kept in another database.
 */
public final class Backup {
  private static final String DIGESTS = "SHA256SUMS";
  private static final String REGISTER = "register/";
  private static final String ARCHIVE = "archive/";
  private static final String DATA = "data/";
  private static final String JSON = ".json";
  private final Store store;
  private final Optional<Path> data;

  /**
   * @param data folder of packs, routes and the like; empty where it is kept elsewhere
   */
  public Backup(Store store, Optional<Path> data) {
    this.store = store;
    this.data = data;
  }

  /** Writes a backup; what the archive lacks is told, and all else is in it. */
  public Answer to(Path file, String who, Duration patience) {
    if (!store.exists()) {
      return store.missing();
    }
    if (!Files.isDirectory(Disk.folder(file))) {
      return Answer.refused(StoreText.error(Disk.folder(file), StoreText.NO_FOLDER));
    }
    if (Files.exists(file)) {
      return Answer.refused(StoreText.error(StoreText.FILE_THERE.with(file)));
    }
    try (Lock lock = store.take(who, patience);
        Register register = store.open()) {
      lock.require();
      Path part = Files.createTempFile(Disk.folder(file), ".backup-", ".part");
      try {
        Map<String, Dump.Table> tables = register.dump().tables();
        Map<String, String> digests = written(part, tables);
        Files.move(part, file, StandardCopyOption.ATOMIC_MOVE);
        List<String> lost = lost(tables, digests, store.kept().digests());
        List<String> said = new ArrayList<>();
        said.add(
            StoreText.BACKED_UP.of(
                (int) digests.keySet().stream().filter(n -> !n.startsWith(REGISTER)).count()));
        if (data.isEmpty()) {
          said.add(StoreText.NO_DATA_IN_IT);
        }
        return new Answer(said, List.of(file), lost, lost.isEmpty());
      } finally {
        Files.deleteIfExists(part);
      }
    } catch (IOException e) {
      return Answer.refused(IoErrorText.inWords(e));
    } catch (RegisterException e) {
      return Answer.refused("error: " + e.getMessage());
    }
  }

  private Map<String, String> written(Path part, Map<String, Dump.Table> tables)
      throws IOException {
    Map<String, String> digests = new TreeMap<>();
    try (OutputStream out = Files.newOutputStream(part);
        ZipOutputStream zip = new ZipOutputStream(out)) {
      for (Map.Entry<String, Dump.Table> table : tables.entrySet()) {
        byte[] json = new ObjectMapper().writeValueAsBytes(table.getValue());
        add(zip, REGISTER + table.getKey() + JSON, json, digests);
      }
      for (String digest : store.kept().digests()) {
        Optional<byte[]> whole = store.kept().read(digest);
        if (whole.isPresent()) {
          add(zip, ARCHIVE + digest, whole.get(), digests);
        }
      }
      if (data.isPresent()) {
        for (Path each : files(data.get())) {
          if (!own(each)) {
            String name = Disk.name(data.get().relativize(each));
            add(zip, DATA + name, Files.readAllBytes(each), digests);
          }
        }
      }
      StringBuilder sums = new StringBuilder();
      digests.forEach((name, digest) -> sums.append(digest).append("  ").append(name).append('\n'));
      zip.putNextEntry(new ZipEntry(DIGESTS));
      zip.write(sums.toString().getBytes(StandardCharsets.UTF_8));
      zip.closeEntry();
    }
    FolderArchive.force(Disk.folder(part));
    return digests;
  }

  private static void add(
      ZipOutputStream zip, String name, byte[] bytes, Map<String, String> digests)
      throws IOException {
    zip.putNextEntry(new ZipEntry(name));
    zip.write(bytes);
    zip.closeEntry();
    digests.put(name, Digest.of(bytes));
  }

  private static List<Path> files(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      return all.filter(Files::isRegularFile).sorted().toList();
    }
  }

  /** Whether a file below the data is the register's or the archive's own. */
  private boolean own(Path file) {
    Path whole = Disk.absolute(file);
    return (!store.holdsItsArchive() && whole.startsWith(Disk.absolute(store.archive())))
        || store.file().map(Disk::absolute).map(whole::equals).orElse(false)
        || String.valueOf(file.getFileName()).startsWith(".backup-");
  }

  /** What the register knows, and the archive does not hold as it was. */
  private static List<String> lost(
      Map<String, Dump.Table> tables, Map<String, String> digests, List<String> held) {
    Dump.Table kept = Optional.ofNullable(tables.get("issue_file")).orElseThrow();
    Set<String> lost = new TreeSet<>();
    for (List<?> row : kept.rows()) {
      String digest = String.valueOf(row.get(kept.columns().indexOf("digest")));
      String role = String.valueOf(row.get(kept.columns().indexOf("role")));
      boolean there = digest.equals(digests.get(ARCHIVE + digest));
      boolean removed =
          OfficePaper.is(String.valueOf(row.get(kept.columns().indexOf("name"))))
              && !held.contains(digest);
      if (!there && !removed && !role.equals("found")) {
        lost.add(
            StoreText.error(
                StoreText.LOST.with(
                    String.valueOf(row.get(kept.columns().indexOf("name"))), digest)));
      }
    }
    return List.copyOf(lost);
  }

  /** Restores a backup, or says why not; then nothing is restored. */
  public Answer from(Path file) {
    try (ZipFile zip = opened(file)) {
      Map<String, byte[]> small = new LinkedHashMap<>();
      List<String> problems = new ArrayList<>(checked(file, zip, small));
      problems.addAll(inTheWay(zip));
      if (!problems.isEmpty()) {
        problems.add(StoreText.error(StoreText.NOTHING_RESTORED));
        return new Answer(List.of(), List.of(), problems, false);
      }
      return restored(zip, small);
    } catch (ZipException e) {
      return Answer.refused(StoreText.error(file, StoreText.NOT_UNPACKED));
    } catch (IOException e) {
      return Answer.refused(IoErrorText.inWords(e));
    } catch (RegisterException e) {
      return Answer.refused("error: " + e.getMessage());
    }
  }

  /** Nobody waits for a pipe. */
  private static ZipFile opened(Path file) throws IOException {
    Disk.require(file);
    return new ZipFile(file.toFile());
  }

  /** Each file against its digest; those of the register are handed over. */
  private static List<String> checked(Path file, ZipFile zip, Map<String, byte[]> register)
      throws IOException {
    Map<String, String> sums = new TreeMap<>();
    ZipEntry list = zip.getEntry(DIGESTS);
    if (list == null) {
      return List.of(StoreText.error(file, StoreText.NO_DIGESTS));
    }
    new String(bytes(zip, list), StandardCharsets.UTF_8)
        .lines()
        .filter(line -> line.length() > 66)
        .forEach(line -> sums.put(line.substring(66), line.substring(0, 64)));
    List<String> problems = new ArrayList<>();
    for (ZipEntry entry : Collections.list(zip.entries())) {
      String name = entry.getName();
      if (name.equals(DIGESTS)) {
        continue;
      }
      byte[] bytes = bytes(zip, entry);
      String wanted = Optional.ofNullable(sums.remove(name)).orElse("");
      boolean archived = !name.startsWith(ARCHIVE) || name.equals(ARCHIVE + wanted);
      if (!Digest.of(bytes).equals(wanted) || !archived) {
        problems.add(StoreText.error(file, StoreText.OTHER_CONTENT.with(name)));
      }
      if (name.startsWith(REGISTER)) {
        register.put(name.substring(REGISTER.length()).replace(JSON, ""), bytes);
      }
    }
    sums.keySet()
        .forEach(name -> problems.add(StoreText.error(file, StoreText.MISSING.with(name))));
    return problems;
  }

  private static byte[] bytes(ZipFile zip, ZipEntry entry) throws IOException {
    try (InputStream in = zip.getInputStream(entry)) {
      return in.readAllBytes();
    }
  }

  private List<String> inTheWay(ZipFile zip) throws IOException {
    List<String> problems = new ArrayList<>();
    if (store.exists()) {
      problems.add(StoreText.error(StoreText.REGISTER_THERE));
    }
    if (store.hasArchive()) {
      problems.add(StoreText.error(StoreText.ARCHIVE_THERE.with(store.kept().where())));
    }
    for (ZipEntry entry : Collections.list(zip.entries())) {
      if (entry.getName().startsWith(DATA) && data.isPresent()) {
        Path place = data.get().resolve(entry.getName().substring(DATA.length())).normalize();
        if (!place.startsWith(data.get().normalize())) {
          problems.add(StoreText.error(StoreText.LEADS_OUT.with(entry.getName())));
        } else if (Files.exists(place)) {
          problems.add(StoreText.error(place, StoreText.THERE));
        }
      }
    }
    return problems;
  }

  /** Archive and data first: a register is there only when all that it knows is. */
  private Answer restored(ZipFile zip, Map<String, byte[]> tables)
      throws IOException, RegisterException {
    Archive archive = store.kept();
    if (store.holdsItsArchive()) {
      store.begin().close();
    }
    int files = 0;
    int left = 0;
    for (ZipEntry entry : Collections.list(zip.entries())) {
      String name = entry.getName();
      if (name.startsWith(ARCHIVE)) {
        archive.keep(bytes(zip, entry));
        files++;
      } else if (name.startsWith(DATA) && data.isEmpty()) {
        left++;
      } else if (name.startsWith(DATA)) {
        Path place = data.get().resolve(name.substring(DATA.length()));
        Files.createDirectories(Disk.folder(place));
        Files.write(place, bytes(zip, entry));
        files++;
      }
    }
    Map<String, Dump.Table> read = new LinkedHashMap<>();
    for (Map.Entry<String, byte[]> table : tables.entrySet()) {
      read.put(table.getKey(), table(table.getValue()));
    }
    try (Register register = store.begin()) {
      register.dump().fill(read);
    }
    Answer restored = Answer.said(StoreText.RESTORED.of(files));
    return left == 0 ? restored : restored.and(Answer.said(StoreText.DATA_LEFT.of(left)));
  }

  private static Dump.Table table(byte[] json) throws IOException {
    try {
      return new ObjectMapper()
          .configure(DeserializationFeature.USE_LONG_FOR_INTS, true)
          .readValue(json, Dump.Table.class);
    } catch (JsonProcessingException e) {
      throw new IOException("the backup has a table that cannot be read", e);
    }
  }
}
