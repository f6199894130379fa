package gradepost.app;

/** One file of a finished pack. */
record Paper(String name, byte[] bytes) {}
