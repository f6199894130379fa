package gradepost.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Property: no paper says of files that somebody checked them who checked other ones. */
@Tag("slow")
class BriefSinceIssuedTest {
  @TempDir Path folder;

  @Test
  void whatWasEditedSinceAnIssueIsPrintedAsADraft() throws Exception {
    Clerk clerk = new Clerk(folder).at("2026-11-29T09:00");
    String register = folder.resolve("register.db").toString();
    String out = folder.resolve("brief").toString();
    String[] brief = {"brief", clerk.pack.toString(), "--out", out, "--register", register};
    clerk.types(1, brief);
    assertThat(clerk.err).startsWith("error: there is no register " + register + "\n");
    clerk.types(0, "brief", clerk.pack.toString(), "--out", out);
    assertThat(paper()).as("no register").contains("driver instructor").doesNotContain("DRAFT");
    clerk.enter();
    clerk.types(0, brief);
    assertThat(clerk.err).doesNotContain("DRAFT");
    assertThat(paper()).as("as issued").contains("driver instructor").doesNotContain("DRAFT");
    Path route = clerk.pack.resolveSibling("route.yaml");
    Files.writeString(route, Files.readString(route) + "# one more word\n");
    clerk.types(0, brief);
    assertThat(clerk.err)
        .contains(
            clerk.pack
                + ": warning: the files were changed since 0000/1: the papers say DRAFT\n  Maybe put the files back, or issue them: gradepost reissue\n");
    assertThat(paper()).contains("DRAFT").doesNotContain("driver instructor");
    clerk.types(
        1,
        "brief",
        clerk.pack.toString(),
        "--out",
        out,
        "--register",
        register,
        "--fail-on",
        "warnings");
  }

  private String paper() throws Exception {
    return Files.readString(folder.resolve("brief/0000-out-3-car.html"));
  }
}
