package gradepost.app.issue;

import gradepost.briefing.CoverIssue;
import gradepost.pack.IssueDetails;
import gradepost.source.file.Input;
import gradepost.source.pack.PackFile;
import gradepost.task.Assignment;
import gradepost.task.PaperPeriod;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.LocalDateTime;
import java.util.HexFormat;
import java.util.List;

/** What a pack file says of its issue, as the cover wants it. */
public final class Issue {

  /** For the papers of one direction and formation. */
  public static CoverIssue of(PackFile pack, Assignment assignment) {
    return new CoverIssue(
        pack.route().name(),
        valid(pack.issue(), assignment),
        fingerprint(pack.inputs()),
        pack.highRisk(assignment.direction(), assignment.formation().name()));
  }

  /** A paper is valid until another takes its place, where one does. */
  private static IssueDetails valid(IssueDetails pack, Assignment assignment) {
    if (assignment.period().isPresent()) {
      PaperPeriod own = assignment.period().get();
      return pack.within(own.from(), own.to());
    }
    LocalDateTime from = pack.validFrom();
    LocalDateTime to = pack.validTo();
    for (PaperPeriod other : assignment.elsewhere()) {
      if (!other.hours().isEmpty()) {
        continue;
      }
      from = other.first() ? other.to() : from;
      to = other.last() ? other.from() : to;
    }
    return from.isBefore(to) ? pack.within(from, to) : pack;
  }

  /** SHA-256 over each file's name and content, each preceded by its length. */
  public static String fingerprint(List<Input> inputs) {
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      for (Input input : inputs) {
        add(digest, input.name().getBytes(StandardCharsets.UTF_8));
        add(digest, input.bytes());
      }
      return HexFormat.of().formatHex(digest.digest());
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  private static void add(MessageDigest digest, byte[] bytes) {
    digest.update(ByteBuffer.allocate(4).putInt(0, bytes.length));
    digest.update(bytes);
  }

  private Issue() {}
}
