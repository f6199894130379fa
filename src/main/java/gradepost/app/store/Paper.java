package gradepost.app.store;

/** One file of a finished pack. */
@SuppressWarnings("ArrayRecordComponent")
public // handed on to be written, never compared
record Paper(String name, byte[] bytes) {}
