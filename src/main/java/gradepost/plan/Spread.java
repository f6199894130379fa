package gradepost.plan;

import java.util.Optional;

/**
 * Where the train comes to its target when the printed technique is carried out and nothing is
 * corrected: where it stands, or where its speed is down to the permissible one of the board.
 * Percentiles of how far short that is, metres, negative past the target; empty where that share of
 * the runs does not come to it on the track that is known.
 *
 * @param pastShare share of the runs that pass the target
 * @param notHeldShare of those that never come to it on the track that is known
 */
public record Spread(
    Optional<Double> shortM05,
    Optional<Double> shortM10,
    Optional<Double> shortM50,
    Optional<Double> shortM95,
    double pastShare,
    double notHeldShare,
    int samples) {}
