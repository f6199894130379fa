package gradepost.source.ride;

import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * What a ride is said to be by whoever asks for its report.
 *
 * @param issue that the driver was briefed with
 * @param direction by the route's own name
 * @param formation by its name
 * @param names of the approaches, by their order; only a filled-in form has need of them
 * @param from where the run begins in an export, by its clock; empty for all of it
 * @param to where it ends
 */
public record RideAsked(
    String issue,
    String direction,
    String formation,
    Supplier<List<String>> names,
    Optional<String> from,
    Optional<String> to) {}
