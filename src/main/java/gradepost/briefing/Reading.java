package gradepost.briefing;

import java.util.List;

/**
 * How to read the paper: units, symbols, lineside marks, and how its points were found.
 *
 * @param assumptions values of the policy, each with what it is for
 * @param practice driving practice that the policy leaves as usual
 */
public record Reading(
    List<Fact> units, List<Fact> symbols, List<String> method, Table assumptions, Table practice) {

  public Reading {
    units = List.copyOf(units);
    symbols = List.copyOf(symbols);
    method = List.copyOf(method);
  }
}
