package gradepost.policy;

import gradepost.units.Length;
import gradepost.units.Speed;

/**
 * How far the plan keeps from what it must not touch.
 *
 * @param stopTolerance how far short of its mark a planned stop may end; none beyond it
 * @param beforeBoard where before a reduction its speed is reached
 * @param underSpeed by how much the planned speed stays under a reduction's
 * @param beforeBuffers least distance from a stop mark to the buffer stops
 * @param beforeSignal how far short of a signal at danger the train stands
 */
public record Margins(
    Length stopTolerance,
    Length beforeBoard,
    Speed underSpeed,
    Length beforeBuffers,
    Length beforeSignal) {}
