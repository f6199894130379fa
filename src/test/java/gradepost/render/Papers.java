package gradepost.render;

import gradepost.briefing.Briefing;
import gradepost.briefing.Messages;
import gradepost.briefing.Printable;
import gradepost.briefing.Reference;
import gradepost.briefing.SampleIssue;
import gradepost.briefing.SamplePlan;
import gradepost.briefing.compose.Composer;
import gradepost.briefing.reference.ReferenceWriter;
import gradepost.plan.Plan;
import gradepost.units.UnitStyle;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** The invented plan as papers, each made once for all tests. */
public final class Papers {
  private static final Map<UnitStyle, Briefing> BRIEFINGS = new ConcurrentHashMap<>();
  private static final Map<UnitStyle, byte[]> PDFS = new ConcurrentHashMap<>();
  private static final Map<UnitStyle, byte[]> REFERENCE_PDFS = new ConcurrentHashMap<>();

  public static Briefing briefing(UnitStyle units) {
    return BRIEFINGS.computeIfAbsent(units, Papers::composed);
  }

  private static Briefing composed(UnitStyle units) {
    return new Composer(Messages.english())
        .compose("", List.of(SamplePlan.of(units)), SampleIssue.issue(), List.of());
  }

  static Renderer renderer() throws IOException {
    return new Renderer(TemplateSource.bundled(), Messages.english());
  }

  static byte[] pdf(UnitStyle units) throws IOException {
    byte[] made = PDFS.get(units);
    if (made == null) {
      made = pdf(briefing(units));
      PDFS.put(units, made);
    }
    return made.clone();
  }

  static byte[] pdf(Printable document) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    renderer().pdf(document, out);
    return out.toByteArray();
  }

  /** What stands beside the paper. */
  public static Reference reference(UnitStyle units) {
    return reference(SamplePlan.of(units), briefing(units));
  }

  /** The reference of a pack of one paper, filed as "pack". */
  public static Reference reference(Plan plan, Briefing briefing) {
    return ReferenceWriter.reference(
        Messages.english(),
        "pack-reference",
        briefing.cover().heading(),
        List.of(new ReferenceWriter.Paper("a b", plan, briefing)));
  }

  static byte[] referencePdf(UnitStyle units) throws IOException {
    byte[] made = REFERENCE_PDFS.get(units);
    if (made == null) {
      made = pdf(reference(units));
      REFERENCE_PDFS.put(units, made);
    }
    return made.clone();
  }

  static String html(Renderer renderer, Printable briefing) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    renderer.html(briefing, out);
    return out.toString(StandardCharsets.UTF_8);
  }

  private Papers() {}
}
