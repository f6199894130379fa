package gradepost.source;

/**
 * A kind of value that only some tables know; whoever brings it says how it is read, and has to say
 * how its schema looks.
 */
non-sealed interface OwnKind<T> extends Kind<T> {}
