package gradepost.app.shelf;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads what is typed at the bench; all that is wrong with it at once. */
final class BenchTyped {
  private final BenchAsked asked;
  private final List<String> problems = new ArrayList<>();

  BenchTyped(BenchAsked asked) {
    // Figures that were shown for another braking are not meant for this one.
    boolean other = asked.of("of").isPresent() && !asked.of("of").equals(asked.of("braking"));
    this.asked = other ? new BenchAsked(Map.of("braking", asked.of("braking").orElse("0"))) : asked;
  }

  List<String> problems() {
    return problems;
  }

  int choice(String field, int of) {
    return choice(field, of, 0);
  }

  /** A number below {@code of}; {@code usual} where nothing is typed. */
  int choice(String field, int of, int usual) {
    Optional<String> typed = asked.of(field);
    if (typed.isEmpty()) {
      return usual;
    }
    if (typed.get().matches("\\d{1,3}") && Integer.parseInt(typed.get()) < of) {
      return Integer.parseInt(typed.get());
    }
    problems.add(ShelfText.CHOICE.with(field, typed.get()).inWords());
    return usual;
  }

  /** Numbers of vehicles, with commas or spaces between them; one vehicle at least is left out. */
  List<Integer> vehicles(String field, int cars) {
    Optional<String> typed = asked.of(field);
    if (typed.isEmpty()) {
      return List.of();
    }
    if (typed.get().matches("\\d{1,2}([ ,]+\\d{1,2})*")) {
      List<Integer> numbers =
          Arrays.stream(typed.get().split("[ ,]+"))
              .map(Integer::valueOf)
              .distinct()
              .sorted()
              .toList();
      if (numbers.get(0) >= 1 && numbers.get(numbers.size() - 1) <= cars && numbers.size() < cars) {
        return numbers;
      }
    }
    problems.add(ShelfText.VEHICLES.with(field, typed.get(), cars).inWords());
    return List.of();
  }

  /** A number within bounds, both allowed. */
  double number(String field, double usual, double least, double most, String unit) {
    Optional<String> typed = asked.of(field);
    // What the form showed and nobody changed is the planned number itself, not its rounded text.
    if (typed.isEmpty() || typed.get().equals(Bench.text(usual))) {
      return usual;
    }
    if (typed.get().matches("-?\\d{1,5}([.,]\\d{1,3})?")) {
      double value = Double.parseDouble(typed.get().replace(',', '.'));
      if (value >= least && value <= most) {
        return value;
      }
    }
    problems.add(
        ShelfText.NUMBER
            .with(field, typed.get(), Bench.text(least), Bench.text(most), unit)
            .inWords());
    return usual;
  }
}
