package gradepost.drive.grid;

import gradepost.plan.Command;

/**
 * A stretch along which the speed is held as one instruction.
 *
 * @param fromM where that begins, distance run of the front, a printed place
 */
public record HeldStretch(double fromM, Command.Hold hold) {}
