package gradepost.plan;

import gradepost.task.Target;

/**
 * What the driver waits for and what he does then.
 *
 * @param target the next target ahead when it is carried out
 */
public record Instruction(Target target, Trigger trigger, Command command) {}
