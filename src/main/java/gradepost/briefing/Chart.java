package gradepost.briefing;

/** Something to be drawn, with its own words for those who do not see it. */
public sealed interface Chart
    permits ApproachChart,
        StripChart,
        TrainChart,
        StandsChart,
        PressureChart,
        SpreadChart,
        CodeChart,
        RunChart {
  /** Unique in the document. */
  String id();

  /** What it is, in a few words. */
  String name();

  /** What it says, in a sentence or two. */
  String says();
}
