package gradepost.briefing;

import java.util.List;

/** How to read the pack: units, symbols, lineside marks, and how its points were found. */
public record Reading(
    List<Fact> units, List<Fact> symbols, List<String> method, Table assumptions) {

  public Reading {
    units = List.copyOf(units);
    symbols = List.copyOf(symbols);
    method = List.copyOf(method);
  }
}
