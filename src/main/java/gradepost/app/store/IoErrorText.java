package gradepost.app.store;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.DirectoryNotEmptyException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** What a disk refuses, in words. */
public final class IoErrorText {
  private static final List<Map.Entry<String, String>> REFUSALS =
      List.of(
          Map.entry("no space left", "the disk is full"),
          Map.entry("not enough space", "the disk is full"),
          Map.entry("quota exceeded", "the disk has no more room for this user"),
          Map.entry("is a directory", "it is a folder"),
          Map.entry("not a directory", "a part of its path is not a folder"),
          Map.entry("read-only file system", "the disk can only be read"),
          Map.entry("permission denied", "it may not be read or written"),
          Map.entry("operation not permitted", "it may not be read or written"),
          Map.entry("file name too long", "its name is too long"),
          Map.entry("too many levels of symbolic links", "it is a link that leads to itself"),
          Map.entry("too many open files", "too many files are open at once"),
          Map.entry("used by another process", "another program has it open"),
          Map.entry("input/output error", "the disk has a fault"),
          Map.entry("stale file handle", "the network drive has gone"),
          Map.entry("input length =", "it is not text in UTF-8"));

  /** A sentence for what the operating system said. */
  public static String inWords(IOException e) {
    if (e instanceof Unplanned) {
      return String.valueOf(e.getMessage());
    } else if (e instanceof FileSystemException at) {
      return at.getFile() + ": error: " + why(at);
    }
    return "error: " + refusal(String.valueOf(e.getMessage()).strip());
  }

  private static String why(FileSystemException e) {
    if (e instanceof NoSuchFileException) {
      return "there is no such file";
    } else if (e instanceof NotDirectoryException) {
      return "there is no such folder";
    } else if (e instanceof AccessDeniedException) {
      return "it may not be read or written";
    } else if (e instanceof DirectoryNotEmptyException) {
      return "the folder is not empty";
    } else if (e instanceof FileAlreadyExistsException) {
      return "there is such a file already";
    }
    String reason = e.getReason();
    return reason == null ? "it cannot be read or written" : refusal(reason);
  }

  /** What operating systems say, in our words; a text of our own stays. */
  private static String refusal(String reason) {
    for (Map.Entry<String, String> known : REFUSALS) {
      if (reason.toLowerCase(Locale.ROOT).contains(known.getKey())) {
        return known.getValue();
      }
    }
    return reason;
  }

  private IoErrorText() {}
}
