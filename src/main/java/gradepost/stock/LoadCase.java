package gradepost.stock;

/** How full the train is. */
public enum LoadCase {
  TARE,
  SEATED,
  CRUSH
}
