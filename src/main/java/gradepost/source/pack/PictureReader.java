package gradepost.source.pack;

import gradepost.pack.Picture;
import gradepost.pack.Pictures;
import gradepost.route.Route;
import gradepost.source.file.FileMistakes;
import gradepost.source.file.FileNames;
import gradepost.source.file.Input;
import gradepost.source.file.SourceFiles;
import gradepost.source.route.LinesideTables;
import gradepost.source.route.StationTables;
import gradepost.yaml.Key;
import gradepost.yaml.Reader;
import gradepost.yaml.SourcePosition;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Reads the pictures that signals, landmarks and stations of a route name, each file once. */
final class PictureReader {
  /** A picture that is printed 45 mm wide needs far less. */
  static final int LARGEST_BYTES = 2 * 1024 * 1024;

  private final SourceFiles files;
  private final Reader route;
  private final String reference;
  private final Map<String, Input> inputs = new LinkedHashMap<>();
  private final Map<String, Picture> found = new LinkedHashMap<>();
  private final Set<String> tried = new HashSet<>();

  /**
   * @param route where problems go; as it read the route
   * @param reference the route's name, as the pack has it
   */
  PictureReader(SourceFiles files, Reader route, String reference) {
    this.files = files;
    this.route = route;
    this.reference = reference;
  }

  /** The files that were read, by their names as seen from the pack. */
  List<Input> inputs() {
    return List.copyOf(inputs.values());
  }

  /** To be asked of once. */
  Pictures of(Route read) {
    read.signals().forEach(s -> named(s, s.picture(), LinesideTables.SIGNAL_PICTURE));
    read.landmarks().forEach(l -> named(l, l.picture(), LinesideTables.PICTURE));
    read.stations().forEach(s -> named(s, s.picture(), StationTables.PICTURE));
    return new Pictures(List.copyOf(found.values()));
  }

  private void named(Object thing, Optional<String> file, Key<String> key) {
    if (file.isPresent() && tried.add(file.get())) {
      picture(file.get(), route.spot(thing, key)).ifPresent(p -> found.put(file.get(), p));
    }
  }

  private Optional<Picture> picture(String file, SourcePosition spot) {
    Optional<String> tidy = FileNames.tidy(file).filter(name -> !name.startsWith(".."));
    Optional<PictureFormat> format = PictureFormat.of(file);
    if (tidy.isEmpty() || format.isEmpty()) {
      route.error(spot, PackMistakes.NO_PICTURE_BESIDE.with(file));
      return Optional.empty();
    }
    return files
        .read(FileNames.seenFrom(route.file(), tidy.get()))
        .match(
            there -> shrunk(file, tidy.get(), there.bytes(), format.get(), spot),
            unreadable -> {
              route.error(spot, FileMistakes.NAMED_UNREADABLE.with(file, unreadable));
              return Optional.empty();
            });
  }

  private Optional<Picture> shrunk(
      String file, String tidy, byte[] bytes, PictureFormat format, SourcePosition spot) {
    Optional<Picture> picture =
        bytes.length > LARGEST_BYTES
            ? Optional.empty()
            : SmallPictures.KEPT.of(file, format, bytes);
    if (picture.isEmpty()) {
      route.error(spot, PackMistakes.NOT_A_PICTURE.with(file));
    } else {
      String name = FileNames.seenFrom(reference, tidy);
      inputs.put(name, new Input(name, bytes));
    }
    return picture;
  }
}
