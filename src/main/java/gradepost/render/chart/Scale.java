package gradepost.render.chart;

/** From a quantity to points along an axis. */
record Scale(double from, double to, double start, double end) {
  double at(double value) {
    return start + (value - from) / (to - from) * (end - start);
  }

  double[] at(double[] values) {
    double[] out = new double[values.length];
    for (int i = 0; i < values.length; i++) {
      out[i] = at(values[i]);
    }
    return out;
  }
}
