/**
 * Issues made by workers on other machines, through the PostgreSQL of the register.
 *
 * <p>In: issues that are due, or the address of a register with tasks in it. Out: what became of
 * each issue. The engine is db-scheduler: a task is taken by one worker, and by another when the
 * first has not been heard of for a while. What a task does is one transaction: the job is ended
 * and the issue is entered, or neither. So a task may be begun twice, and its issue is entered
 * once.
 *
 * <p>A worker needs the address of the register alone: inputs, papers and a depot's templates are
 * in its archive. A task is taken only by a program that makes the same bytes.
 *
 * <p>Not promised: the order of the issues.
 */
@NullMarked
package gradepost.app.queue;

import org.jspecify.annotations.NullMarked;
