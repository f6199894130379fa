package gradepost.pack;

/**
 * What a landmark, a signal or a station looks like, small enough to be printed beside its words.
 *
 * @param file as the route names it
 * @param data the picture itself as a data address: {@code data:image/png;base64,} and what follows
 * @param widthPx dots across
 * @param heightPx dots down
 */
public record Picture(String file, String data, int widthPx, int heightPx) {}
