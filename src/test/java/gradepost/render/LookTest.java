package gradepost.render;

import gradepost.briefing.Briefing;
import gradepost.briefing.Messages;
import gradepost.briefing.SamplePlan;
import gradepost.briefing.compose.Composer;
import gradepost.units.UnitStyle;
import java.io.ByteArrayOutputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

class LookTest {
  @Test
  void look() throws Exception {
    Messages m = Messages.english();
    Path dir = Path.of("target/look");
    Files.createDirectories(dir);
    Renderer r = new Renderer(TemplateSource.bundled(), m);
    for (UnitStyle u : UnitStyle.values()) {
      Briefing b =
          new Composer(m).compose("", List.of(SamplePlan.of(u)), SamplePlan.issue(), List.of());
      try (OutputStream o = Files.newOutputStream(dir.resolve(u + ".pdf"))) {
        r.pdf(b, o);
      }
      try (OutputStream o = Files.newOutputStream(dir.resolve(u + ".html"))) {
        r.html(b, o);
      }
      if (u == UnitStyle.MILES) {
        for (int i = 0; i < 30; i++) {
          long t = System.nanoTime();
          Briefing c =
              new Composer(m).compose("", List.of(SamplePlan.of(u)), SamplePlan.issue(), List.of());
          long t1 = System.nanoTime();
          ByteArrayOutputStream o = new ByteArrayOutputStream();
          r.pdf(c, o);
          if (i % 5 == 4)
            System.out.println(
                "compose "
                    + (t1 - t) / 1000000
                    + " pdf ms "
                    + (System.nanoTime() - t1) / 1000000
                    + " size "
                    + o.size());
        }
      }
    }
  }
}
