/**
 * What every page of the desk has in common: its frame, who asks, what is looked up, what is
 * refused, and why a paper is not one to drive by.
 */
@NullMarked
package gradepost.desk.page;

import org.jspecify.annotations.NullMarked;
