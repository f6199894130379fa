package gradepost.app.author;

import java.nio.file.Path;

/**
 * A file of data in the folder of the desk.
 *
 * @param name from the folder, with slashes
 * @param kind the word of its kind, such as {@code route}; empty text where it says none
 * @param at where it lies
 */
public record LineFile(String name, String kind, Path at) {}
