package gradepost.app.shelf;

/**
 * One paper of a pack.
 *
 * @param stem what its files are named after
 * @param direction as the route calls it
 * @param train the formation, with its edition if it is of one
 */
public record ShelfPaper(String stem, String direction, String train) {}
