package gradepost.app.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import gradepost.app.Depot;
import gradepost.app.Reproduce;
import gradepost.app.SyntheticNetwork;
import gradepost.reissue.register.Entry;
import gradepost.reissue.register.PostgresServer;
import gradepost.reissue.register.Register;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** Property: a register that holds its archive itself is all that a depot has to keep. */
@Tag("slow")
@EnabledOnOs(value = OS.LINUX, architectures = "amd64")
class RegisterArchiveTest {
  private static final Optional<Path> IN_IT = Optional.of(Path.of(Store.REGISTER));
  @TempDir Path folder;

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  @Test
  void aReissueKeepsEverythingInIt() throws Exception {
    Store store = Store.of(PostgresServer.fresh(), IN_IT);
    List<Path> packs = new SyntheticNetwork(folder.resolve("routes"), 1).packs(1, 1);
    Path notice =
        Files.writeString(
            folder.resolve("notice.yaml"), SyntheticNetwork.notice("T 1", 0, "Out", 900, 20));
    Answer answer =
        new Depot(folder)
            .reissue(
                Depot.NOON,
                store,
                packs,
                Optional.of(notice),
                false,
                false,
                gradepost.app.reissue.Order.Edits.NONE);
    assertThat(answer.problems()).isEmpty();
    assertThat(folder.resolve("out/0000-issue-2/0000-out-3-car.pdf")).exists();
    try (var files = Files.list(folder)) {
      assertThat(files.map(f -> f.getFileName().toString()))
          .containsExactlyInAnyOrder("routes", "notice.yaml", "out");
    }

    Path zip = folder.resolve("backup.zip");
    Duration none = Duration.ZERO;
    assertThat(new Backup(store, Optional.empty()).to(zip, "a clerk", none).problems()).isEmpty();
    Store other = Store.of(PostgresServer.fresh(), IN_IT);
    assertThat(new Backup(other, Optional.empty()).from(zip).problems()).isEmpty();
    assertThat(
            new Reproduce(other, Optional.empty(), Progress.SILENT)
                .of("0000/2", Optional.empty())
                .said()
                .toString())
        .contains("0000/2 reproduced byte for byte");
    try (Register register = other.open()) {
      Entry entry = register.issue("0000", 2).orElseThrow();
      assertThat(other.kept().digests()).contains(entry.papers().get(0).digest());
    }
  }

  @Test
  void aDamagedContentIsMissedAndMendedAndALostConnectionMadeAgain() throws Exception {
    String url = PostgresServer.fresh();
    Store store = Store.of(url, IN_IT);
    assertThat(store.hasArchive()).isFalse();
    store.begin().close();
    Archive archive = store.kept();
    String digest = archive.keep(bytes("one"));
    assertThat(archive.keep(bytes("one"))).isEqualTo(digest);
    try (Connection c = DriverManager.getConnection(url);
        Statement s = c.createStatement()) {
      s.execute("UPDATE content SET bytes = 'x'");
      assertThat(archive.read(digest)).isEmpty();
      s.execute(
          "SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE pid <> pg_backend_pid()"
              + " AND datname = current_database()");
    }
    archive.keep(bytes("one"));
    assertThat(archive.read(digest)).hasValue(bytes("one"));
    assertThat(archive.digests()).containsExactly(digest);
    assertThat(store.hasArchive()).isTrue();
  }

  @Test
  void inOneDatabaseOnlyOneRunIsAtWorkWhereverItIs() throws Exception {
    Store store = Store.of(PostgresServer.fresh(), IN_IT);
    try (Lock lock = store.take("B Clerk (process 1)", Duration.ZERO)) {
      lock.require();
      assertThatThrownBy(() -> store.take("C Clerk", Duration.ZERO))
          .isInstanceOf(IOException.class)
          .hasMessage(
              "the register is held by B Clerk (process 1); nothing was done\n"
                  + "  Maybe wait with --wait SECONDS");
    }
    store.take("C Clerk", Duration.ZERO).close();
  }
}
