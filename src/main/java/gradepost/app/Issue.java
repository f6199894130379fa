package gradepost.app;

import gradepost.briefing.IssueDetails;
import gradepost.route.Direction;
import gradepost.source.Input;
import gradepost.source.PackFile;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;

/** What a pack file says of its issue, as the cover wants it. */
final class Issue {

  /** For the papers of one direction. */
  static IssueDetails of(PackFile pack, Direction direction) {
    var issue = pack.issue();
    List<String> highRisk = new ArrayList<>();
    pack.directions().stream()
        .filter(p -> p.direction() == direction)
        .forEach(p -> highRisk.addAll(p.highRisk()));
    highRisk.addAll(pack.highRisk());
    return new IssueDetails(
        String.valueOf(issue.number()),
        issue.issued(),
        issue.validFrom(),
        issue.validTo(),
        issue.supersedes(),
        Optional.of(issue.knownUpTo()),
        issue.preparedBy(),
        issue.checkedBy().orElse(""),
        issue.copy().orElse(""),
        issue.holder().orElse(""),
        issue.sources(),
        fingerprint(pack.inputs()),
        highRisk);
  }

  /** SHA-256 over each file's name and content, each preceded by its length. */
  static String fingerprint(List<Input> inputs) {
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
