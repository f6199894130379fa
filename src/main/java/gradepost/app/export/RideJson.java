package gradepost.app.export;

import gradepost.ride.Leg;
import gradepost.ride.RideResult;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Writes an assessed ride as JSON. */
public final class RideJson {
  /**
   * Whose ride, on what, and when; empty where it was not given.
   *
   * @param fingerprint of the inputs of the pack
   */
  public record Of(
      String fingerprint,
      String direction,
      String formation,
      String driver,
      String assessor,
      String day) {}

  /**
   * The file.
   *
   * @param names of the approaches, in order
   */
  public static byte[] of(Of ride, RideResult result, List<String> names) {
    List<RideFile.OfApproach> approaches = new ArrayList<>();
    for (int i = 0; i < names.size(); i++) {
      RideResult.OfApproach a = result.approaches().get(i);
      approaches.add(
          new RideFile.OfApproach(a.approach().number(), names.get(i), a.marks(), a.observed()));
    }
    Map<String, String> leftOut = new TreeMap<>();
    result.leftOut().forEach((number, why) -> leftOut.put(number.toString(), why));
    return RecordJson.bytes(
        new RideFile(
            RideFile.KIND,
            RideFile.VERSION,
            ride.fingerprint(),
            ride.direction(),
            ride.formation(),
            ride.driver(),
            ride.assessor(),
            ride.day(),
            result.outcome(),
            result.points(),
            result.observed(),
            result.possible(),
            result.faults(),
            result.run().map(r -> r.legs()).orElse(List.of()).stream().map(RideJson::leg).toList(),
            leftOut,
            approaches));
  }

  private static RideFile.OfLeg leg(Leg leg) {
    return new RideFile.OfLeg(
        leg.from(), leg.to(), leg.fromM(), leg.toM(), leg.countedM(), leg.scale(), leg.trusted());
  }

  private RideJson() {}
}
