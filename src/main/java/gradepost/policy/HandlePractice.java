package gradepost.policy;

import gradepost.units.Span;

/**
 * Which movements of the handles are not made where no rule of the operator says it.
 *
 * @param riseWaitedFor no brake checks a train that comes to a higher permissible speed within this
 * @param notchAtLeast a higher notch is not taken so shortly before power comes off
 * @param movementSaves a fastest run does without a movement for a moment that saves no more than
 *     this
 */
public record HandlePractice(Span riseWaitedFor, Span notchAtLeast, Span movementSaves) {

  /** Common practice, from memory. */
  public static final HandlePractice USUAL =
      new HandlePractice(new Span(8), new Span(5), new Span(8));
}
