package gradepost.app.export;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import gradepost.route.audit.AuditRule;
import gradepost.yaml.Problem;
import gradepost.yaml.Problems;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Problems as a SARIF log (OASIS, Static Analysis Results Interchange Format, version 2.1.0). */
public final class Sarif {
  /** The rule under which whatever makes a file unreadable is listed. */
  static final String DATA = "data";

  /** The rule under which a plan that fails its own check is listed. */
  public static final String UNFIT = "plan-unfit";

  private final Map<String, String> rules = new LinkedHashMap<>();

  private Sarif() {
    rules.put(DATA, "A file can be read and its values are within their bounds.");
    rules.put(UNFIT, "A plan, driven again from its printed numbers, breaks no rule.");
    for (AuditRule rule : AuditRule.values()) {
      rules.put(rule.code(), rule.summary());
    }
  }

  /** The log as JSON, in the order of the problems. */
  public static String of(Problems problems) {
    StringWriter text = new StringWriter();
    try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
      DefaultIndenter lines = new DefaultIndenter("  ", "\n");
      json.setPrettyPrinter(
          new DefaultPrettyPrinter().withObjectIndenter(lines).withArrayIndenter(lines));
      new Sarif().write(problems, json);
    } catch (IOException e) {
      throw new UncheckedIOException("a text can always be written to", e);
    }
    return text.toString();
  }

  private void write(Problems problems, JsonGenerator json) throws IOException {
    json.writeStartObject();
    json.writeStringField("$schema", "https://json.schemastore.org/sarif-2.1.0.json");
    json.writeStringField("version", "2.1.0");
    json.writeArrayFieldStart("runs");
    json.writeStartObject();
    json.writeObjectFieldStart("tool");
    json.writeObjectFieldStart("driver");
    json.writeStringField("name", "gradepost");
    json.writeArrayFieldStart("rules");
    for (Map.Entry<String, String> rule : rules.entrySet()) {
      json.writeStartObject();
      json.writeStringField("id", rule.getKey());
      text(json, "shortDescription", rule.getValue());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeEndObject();
    json.writeEndObject();
    json.writeStringField("columnKind", "utf16CodeUnits");
    json.writeArrayFieldStart("results");
    for (Problem problem : problems.all()) {
      result(problem, json);
    }
    json.writeEndArray();
    json.writeEndObject();
    json.writeEndArray();
    json.writeEndObject();
  }

  private void result(Problem problem, JsonGenerator json) throws IOException {
    String rule = problem.rule().isEmpty() ? DATA : problem.rule();
    json.writeStartObject();
    json.writeStringField("ruleId", rule);
    json.writeNumberField("ruleIndex", List.copyOf(rules.keySet()).indexOf(rule));
    json.writeStringField("level", problem.severity().word());
    text(json, "message", message(problem));
    json.writeArrayFieldStart("locations");
    json.writeStartObject();
    json.writeObjectFieldStart("physicalLocation");
    json.writeObjectFieldStart("artifactLocation");
    json.writeStringField("uri", uri(problem.spot().file()));
    json.writeEndObject();
    json.writeObjectFieldStart("region");
    json.writeNumberField("startLine", problem.spot().line());
    json.writeNumberField("startColumn", problem.spot().column());
    json.writeEndObject();
    json.writeEndObject();
    json.writeEndObject();
    json.writeEndArray();
    json.writeEndObject();
  }

  private static String message(Problem problem) {
    return problem.what()
        + (problem.allowed().isEmpty() ? "" : "; allowed: " + problem.allowed())
        + (problem.maybe().isEmpty() ? "" : "\nMaybe " + problem.maybe());
  }

  /** A name with slashes as a URI reference: what is no letter of a URI is written as its bytes. */
  private static String uri(String file) {
    try {
      boolean absolute = file.startsWith("/");
      URI uri = new URI(absolute ? "file" : null, absolute ? "" : null, file, null);
      return uri.toASCIIString();
    } catch (URISyntaxException e) {
      throw new IllegalStateException("a path is always a path", e);
    }
  }

  private static void text(JsonGenerator json, String name, String text) throws IOException {
    json.writeObjectFieldStart(name);
    json.writeStringField("text", text);
    json.writeEndObject();
  }
}
