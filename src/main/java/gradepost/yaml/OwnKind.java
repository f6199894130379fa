package gradepost.yaml;

/**
 * A kind of value that only some tables know; whoever brings it says how it is read, and has to say
 * how its schema looks.
 */
public non-sealed interface OwnKind<T> extends ValueType<T> {}
