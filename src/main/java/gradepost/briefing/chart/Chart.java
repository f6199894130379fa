package gradepost.briefing.chart;

/** Something to be drawn, with its own words for those who do not see it. */
public sealed interface Chart
    permits ApproachChart,
        LineChart,
        TrainChart,
        StandsChart,
        PressureChart,
        CodeChart,
        RunChart,
        RoadChart {
  /** Unique in the document. */
  String id();

  /** What it is, in a few words. */
  String name();

  /** What it says, in a sentence or two. */
  String says();

  /**
   * A speed that is held between two figures along a stretch.
   *
   * @param lower in the speed unit of the chart, as {@code upper}
   * @param text what is written beside it
   */
  record HeldBand(double fromM, double toM, double lower, double upper, String text) {}

  /** One answer for each kind. */
  interface Cases<T> {
    /** An approach by speed and place. */
    T approach(ApproachChart chart);

    /** A sheet of the line. */
    T line(LineChart chart);

    /** The train from the side. */
    T train(TrainChart chart);

    /** Where it stands at a platform. */
    T stands(StandsChart chart);

    /** The pressure over time. */
    T pressure(PressureChart chart);

    /** A code to be scanned. */
    T code(CodeChart chart);

    /** A driven run beside the planned one. */
    T run(RunChart chart);

    /** The whole road. */
    T road(RoadChart chart);
  }

  /** The answer for this kind. */
  <T> T match(Cases<T> cases);
}
