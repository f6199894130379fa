package gradepost.app.store;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;

/** What a disk refuses, in words. */
public final class IoErrorText {

  /** A sentence for what the operating system said. */
  public static String inWords(IOException e) {
    if (e instanceof Unplanned) {
      return String.valueOf(e.getMessage());
    } else if (e instanceof FileSystemException at) {
      return at.getFile() + ": error: " + why(at);
    }
    return "error: " + String.valueOf(e.getMessage()).strip();
  }

  private static String why(FileSystemException e) {
    if (e instanceof NoSuchFileException) {
      return "there is no such file";
    } else if (e instanceof NotDirectoryException) {
      return "there is no such folder";
    } else if (e instanceof AccessDeniedException) {
      return "it may not be read or written";
    }
    String reason = e.getReason();
    return reason == null ? "it cannot be read or written" : reason;
  }

  private IoErrorText() {}
}
