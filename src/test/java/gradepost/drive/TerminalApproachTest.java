package gradepost.drive;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.plan.Action;
import gradepost.plan.Application;
import gradepost.plan.Approach;
import gradepost.plan.CaseResult;
import gradepost.plan.Command;
import gradepost.plan.Finding;
import gradepost.plan.fallback.Latest;
import gradepost.plan.fallback.Rung;
import gradepost.stock.BrakeSystem.Role;
import gradepost.task.Target;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Property: up a platform road that ends in buffer stops the brake goes on for each step of the
 * speed and to stand, and of each application it is known what is left when the brake gives
 * nothing.
 */
@Tag("slow")
class TerminalApproachTest {
  private static final double ROOT_M = 0.02;

  static List<Approach> terminals() {
    return DemoPlans.tried().stream()
        .map(DemoPlans::plan)
        .flatMap(p -> p.approaches().stream())
        .filter(a -> a.target() instanceof Target.Stop stop && stop.terminal())
        .toList();
  }

  @ParameterizedTest
  @MethodSource("terminals")
  void noApplicationIsLeftOut(Approach terminal) {
    List<Double> places =
        terminal.actions().stream()
            .filter(a -> a.command() instanceof Command.Brake b && begins(b))
            .map(Action::atM)
            .toList();
    List<Application> applications = terminal.applications();
    assertThat(applications).hasSizeGreaterThan(1).hasSameSizeAs(places);
    for (int i = 0; i < places.size(); i++) {
      Application application = applications.get(i);
      boolean last = i + 1 == places.size();
      assertThat(application.brakingPointM()).isBetween(places.get(i) - 1e-6, places.get(i) + 1e-6);
      assertThat(application.target().equals(terminal.target())).isEqualTo(last);
      assertThat(application.forStep()).isEqualTo(!last);
      assertThat(application.exactBrakingPointM()).isGreaterThan(places.get(i) - 1e-6);
    }
    assertThat(terminal.brakingPointM()).contains(places.get(0));
    assertThat(terminal.brakingSpeedMps()).isEqualTo(applications.get(0).brakingSpeedMps());
  }

  private static boolean begins(Command.Brake brake) {
    return brake.stage() == Command.Stage.FIRST;
  }

  /**
   * A place, at or before the computed one and not behind the mark, or the reason why there is
   * none.
   */
  @ParameterizedTest
  @MethodSource("terminals")
  void everyApplicationHasALastPlaceForEachBrakeOrSaysThatThereIsNone(Approach terminal) {
    for (Application application : terminal.applications()) {
      for (CaseResult told : application.told()) {
        assertThat(told.ladder()).extracting(r -> r.brake().role()).containsExactly(Role.values());
        assertThat(told.answers()).hasSize(2);
        for (Rung rung : told.ladder()) {
          if (rung.latest() instanceof Latest.Point point) {
            assertThat(point.printedM()).isLessThanOrEqualTo(point.exactM() + 1e-6);
            assertThat(point.exactM()).isLessThan(terminal.target().atM());
          } else {
            assertThat(((Latest.Nowhere) rung.latest()).reason()).isNotNull();
          }
        }
      }
    }
  }

  /**
   * Who is late with one brake may have the next; the train is slower at each, and can be later.
   */
  @ParameterizedTest
  @MethodSource("terminals")
  void noLaterApplicationHasAnEarlierLastPlace(Approach terminal) {
    List<Application> all = terminal.applications();
    for (int i = 1; i < all.size(); i++) {
      for (int c = 0; c < all.get(i).told().size(); c++) {
        for (Role role : new Role[] {Role.FALLBACK, Role.EMERGENCY}) {
          double before = latestM(all.get(i - 1).told().get(c), role);
          double after = latestM(all.get(i).told().get(c), role);
          assertThat(after).isGreaterThan(before - ROOT_M);
        }
      }
      assertThat(all.get(i).atBuffersMps().orElse(0.0))
          .isLessThan(all.get(i - 1).atBuffersMps().orElseThrow());
    }
  }

  private static double latestM(CaseResult told, Role role) {
    return told.ladder().stream()
        .filter(r -> r.brake().role() == role)
        .map(r -> (Latest.Point) r.latest())
        .mapToDouble(Latest.Point::exactM)
        .findFirst()
        .orElseThrow();
  }

  /** The finding at the head of the page is for the brake that never goes on at all. */
  @ParameterizedTest
  @MethodSource("terminals")
  void theSpeedAtTheBuffersIsThatFromTheFirstApplication(Approach terminal) {
    double first = terminal.applications().get(0).atBuffersMps().orElseThrow();
    assertThat(first).isGreaterThan(terminal.brakingSpeedMps() / 2);
    assertThat(terminal.findings())
        .filteredOn(f -> f instanceof Finding.AtBuffers)
        .containsExactly(new Finding.AtBuffers(first));
  }
}
