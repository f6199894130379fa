package gradepost.app.shelf;

/**
 * One approach that a notice touches: the run as it was and as it would be.
 *
 * @param pack by its id
 * @param paper what its files are named after
 * @param drawn both runs, speed against distance, in lines of the kinds {@code before} and {@code
 *     now}; of an approach that is removed, or new, one is as the train runs there without it
 * @param state that it is new, removed, or differs
 */
public record TouchedRun(
    String pack, String paper, String approach, String state, BenchShown drawn) {}
