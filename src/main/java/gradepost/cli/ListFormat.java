package gradepost.cli;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import gradepost.app.Lists;
import gradepost.app.export.ListingCsv;
import gradepost.cli.terminal.Saying;
import gradepost.reissue.register.Listing;
import gradepost.reissue.register.Question;
import gradepost.units.PrintedText;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** How a list is printed: for eyes, or for another program. */
final class ListFormat {
  @Option(names = "--csv", description = "As CSV, with a row of headings.")
  private boolean csv;

  @Option(names = "--json", description = "As JSON, an object for each row.")
  private boolean json;

  @Option(names = "--pack", paramLabel = "NAME", description = "Only what is of this pack.")
  private @Nullable String pack;

  @Option(names = "--person", paramLabel = "NAME", description = "Only what names this person.")
  private @Nullable String person;

  @Option(
      names = "--since",
      paramLabel = "DATE",
      description = "Only from this day on, such as 2026-11-30.")
  private @Nullable LocalDate since;

  @Option(
      names = "--in-force",
      description = "Only what is in force: not recalled, superseded, taken back or over.")
  private boolean inForce;

  /** Which rows are wanted. */
  Listing.Wish wish(LocalDateTime now) {
    return new Listing.Wish(
        Optional.ofNullable(pack),
        Optional.ofNullable(person),
        Optional.ofNullable(since).map(LocalDate::toString),
        inForce ? Optional.of(now) : Optional.empty());
  }

  /** Asks the register and prints the rows that are wanted; the exit code of the command. */
  int list(RegisterOptions register, Question question) {
    LocalDateTime now = LocalDateTime.now(Main.clock(register.command()));
    return new Lists(register.store())
        .list(question, wish(now))
        .match(
            rows -> {
              print(rows.listing(), register.command().commandLine().getOut());
              return 0;
            },
            nothing -> Saying.exitCode(register.command(), nothing.why()));
  }

  void print(Listing listing, PrintWriter out) {
    if (json) {
      out.print(json(listing) + "\n");
    } else if (csv) {
      out.print(ListingCsv.of(listing));
    } else {
      out.print(table(listing));
    }
    out.flush();
  }

  private static String json(Listing listing) {
    StringWriter text = new StringWriter();
    try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
      json.setPrettyPrinter(new DefaultPrettyPrinter());
      json.writeStartArray();
      for (List<String> row : listing.rows()) {
        json.writeStartObject();
        for (int i = 0; i < row.size(); i++) {
          json.writeStringField(listing.columns().get(i), row.get(i));
        }
        json.writeEndObject();
      }
      json.writeEndArray();
    } catch (IOException e) {
      throw new UncheckedIOException("writing to memory", e);
    }
    return text.toString();
  }

  private static String table(Listing listing) {
    if (listing.rows().isEmpty()) {
      return "NONE\n";
    }
    List<List<String>> all = new ArrayList<>();
    all.add(listing.columns());
    listing.rows().forEach(r -> all.add(r.stream().map(ListFormat::shown).toList()));
    int[] widths = new int[listing.columns().size()];
    for (List<String> row : all) {
      for (int i = 0; i < widths.length; i++) {
        widths[i] = Math.max(widths[i], row.get(i).length());
      }
    }
    StringBuilder out = new StringBuilder();
    for (List<String> row : all) {
      StringBuilder line = new StringBuilder();
      for (int i = 0; i < widths.length; i++) {
        line.append(row.get(i)).append(" ".repeat(widths[i] - row.get(i).length() + 2));
      }
      out.append(line.toString().stripTrailing()).append('\n');
    }
    return out.toString();
  }

  /** A fingerprint is known by its first twelve digits. */
  private static String shown(String text) {
    return text.matches("[0-9a-f]{64}")
        ? text.substring(0, 12)
        : Listing.moment(PrintedText.seen(text));
  }
}
