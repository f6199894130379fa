package gradepost.text;

/** What knows what may stand at a place. */
public interface Allowed {

  /** What may stand there, in words and with its unit: "a speed, such as 40 mph or 64 km/h". */
  String allowed();
}
