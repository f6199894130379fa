package gradepost.policy;

import gradepost.units.Length;
import gradepost.units.Speed;

/** On a platform road that ends in buffer stops: no faster than this within so far of the mark. */
public record TerminalStep(Length beforeMark, Speed speed) {}
