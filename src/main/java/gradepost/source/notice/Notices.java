package gradepost.source.notice;

import gradepost.pack.TemporaryRestriction;
import java.util.List;
import java.util.Optional;

/**
 * The temporary restrictions of one file.
 *
 * @param none what is stated where there are none ("none in force, checked on 2026-11-20")
 */
public record Notices(List<TemporaryRestriction> all, Optional<String> none) {
  public Notices {
    all = List.copyOf(all);
  }
}
