package gradepost.app;

/** One file of a finished pack. */
@SuppressWarnings("ArrayRecordComponent") // handed on to be written, never compared
record Paper(String name, byte[] bytes) {}
