package gradepost.app;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Arrays;
import java.util.TreeSet;

/** The track of a hand-over file, as {@link HandOverTrain} feels it. */
final class HandOverTrack {
  private final double[] knotM;

  /** Elevation, and the height whose climb costs what the curves cost. */
  private final double[] feltM;

  private final double[] poorFromM;
  private final double[] poorToM;

  HandOverTrack(JsonNode file, boolean curvesCount) {
    JsonNode elevation = file.at("/track/elevation");
    double[] at = numbers(elevation, "atM");
    double[] height = numbers(elevation, "elevationM");
    TreeSet<Double> knots = new TreeSet<>();
    for (double x : at) {
      knots.add(x);
    }
    for (JsonNode curve : file.at("/track/curves")) {
      knots.add(curve.get("fromM").doubleValue());
      knots.add(curve.get("toM").doubleValue());
    }
    knotM = knots.stream().mapToDouble(Double::doubleValue).toArray();
    feltM = new double[knotM.length];
    double curved = 0;
    for (int i = 0; i < knotM.length; i++) {
      if (i > 0 && curvesCount) {
        double perKn = curveNPerKn(file, (knotM[i - 1] + knotM[i]) / 2);
        curved += perKn / 1000 * (knotM[i] - knotM[i - 1]);
      }
      feltM[i] = line(at, height, knotM[i]) + curved;
    }
    JsonNode sites = file.get("lowAdhesionSites");
    poorFromM = numbers(sites, "fromM");
    poorToM = numbers(sites, "toM");
  }

  /** Newtons for each kilonewton of weight at a place; of two curves the worse. */
  private static double curveNPerKn(JsonNode file, double place) {
    JsonNode train = file.get("train");
    double worst = 0;
    for (JsonNode curve : file.at("/track/curves")) {
      if (curve.get("fromM").doubleValue() < place && place < curve.get("toM").doubleValue()) {
        double r = curve.get("radiusM").doubleValue();
        JsonNode law = train.get("curveLaw");
        double own =
            switch (law.get("kind").textValue()) {
              case "RocklCurve" -> r < 300 ? 500 / (r - 30) : 650 / (r - 55);
              case "DegreeCurve" ->
                  law.get("poundsPerTonPerDegree").doubleValue()
                      / 2
                      * Math.toDegrees(2 * Math.asin(50 * 0.3048 / r));
              default -> throw new AssertionError(law);
            };
        if (curve.get("checkRailed").booleanValue()) {
          own += train.get("checkRailDragNPerKn").doubleValue();
        }
        worst = Math.max(worst, own);
      }
    }
    return worst;
  }

  private static double[] numbers(JsonNode list, String field) {
    double[] out = new double[list.size()];
    for (int i = 0; i < out.length; i++) {
      out[i] = list.get(i).get(field).doubleValue();
    }
    return out;
  }

  /** A broken line; its end pieces go on. */
  private static double line(double[] x, double[] y, double at) {
    int found = Arrays.binarySearch(x, at);
    int i = Math.min(Math.max(found < 0 ? -found - 1 : found, 1), x.length - 1);
    return y[i - 1] + (y[i] - y[i - 1]) * (at - x[i - 1]) / (x[i] - x[i - 1]);
  }

  double feltM(double place) {
    return line(knotM, feltM, place);
  }

  /** Share of a vehicle that is on low-adhesion sites. */
  double poorShare(double rear, double front) {
    double on = 0;
    for (int i = 0; i < poorFromM.length; i++) {
      on += Math.max(0, Math.min(front, poorToM[i]) - Math.max(rear, poorFromM[i]));
    }
    return on / (front - rear);
  }
}
