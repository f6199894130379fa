package gradepost.app.author;

/**
 * What a file says.
 *
 * @param text lines that end with a line feed
 * @param digest of the text, by which a change in between is known
 * @param marked whether the file begins with a byte order mark, which is not part of the text
 */
public record OpenText(String text, String digest, boolean marked) {}
