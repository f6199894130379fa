package gradepost.source.policy;

import gradepost.policy.AdhesionCase;
import gradepost.source.policy.PolicyTables.TypedCase;
import gradepost.stock.law.AdhesionLaw;
import gradepost.stock.law.ConstantAdhesion;
import gradepost.stock.law.CurtiusKniffler;
import gradepost.stock.law.ShareOf;
import gradepost.units.Nearest;
import gradepost.yaml.Common;
import gradepost.yaml.Forms;
import gradepost.yaml.Key;
import gradepost.yaml.ListOf;
import gradepost.yaml.ObjectSchema;
import gradepost.yaml.SourcePosition;
import gradepost.yaml.ValueType;
import gradepost.yaml.Values;
import gradepost.yaml.Variants;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What holds on the low-adhesion sites of a route, and in which states of the rail.
 *
 * @param law of its own; empty where it is a share of a case
 * @param of the case of which it is a share
 * @param in names of the cases in which the sites are so; empty for every case but the planned one
 */
record SiteAdhesion(Optional<AdhesionLaw> law, Optional<String> of, double share, List<String> in) {
  private static final double FASTEST_MPS = 400 / 3.6;

  static final Key<List<String>> IN =
      Key.preset(
          "in",
          ListOf.some(Common.text("the name of an adhesion case")),
          List.of(),
          "every case but the planned one",
          "The adhesion cases in which the sites are so.");
  static final Key<Double> VALUE =
      Key.required("value", PolicyTables.MU.kind(), "Adhesion on the sites at every speed.");

  static final Key<SiteAdhesion> SITES =
      Key.optional(
          "site-adhesion",
          new Forms<>("adhesion on the sites", forms()),
          "What holds on the low-adhesion sites of the route; left out, they are named only.");

  private static Map<String, ValueType<? extends SiteAdhesion>> forms() {
    Map<String, ValueType<? extends SiteAdhesion>> forms = new LinkedHashMap<>();
    forms.put(
        VALUE.name(),
        ObjectSchema.of(
            "adhesion on the sites",
            List.of(VALUE, IN, PolicyTables.FOR),
            v -> own(v, new ConstantAdhesion(v.get(VALUE)))));
    forms.put("law", new Variants<>("adhesion on the sites", "law", laws()));
    return forms;
  }

  private static Map<String, ObjectSchema<? extends SiteAdhesion>> laws() {
    Map<String, ObjectSchema<? extends SiteAdhesion>> laws = new LinkedHashMap<>();
    laws.put(
        "curtius-kniffler",
        ObjectSchema.of(
            "adhesion by Curtius and Kniffler",
            List.of(PolicyTables.CASE_LAW, IN, PolicyTables.FOR),
            v -> own(v, new CurtiusKniffler())));
    laws.put(
        "constant",
        ObjectSchema.of(
            "constant adhesion",
            List.of(PolicyTables.CASE_LAW, PolicyTables.MU, IN, PolicyTables.FOR),
            v -> own(v, new ConstantAdhesion(v.get(PolicyTables.MU)))));
    laws.put(
        "share",
        ObjectSchema.of(
            "a share of a case",
            List.of(
                PolicyTables.CASE_LAW, PolicyTables.OF, PolicyTables.SHARE, IN, PolicyTables.FOR),
            v ->
                new SiteAdhesion(
                    Optional.empty(),
                    Optional.of(v.get(PolicyTables.OF)),
                    v.get(PolicyTables.SHARE),
                    v.get(IN))));
    return laws;
  }

  private static SiteAdhesion own(Values v, AdhesionLaw law) {
    return new SiteAdhesion(Optional.of(law), Optional.empty(), 1, v.get(IN));
  }

  /** The cases with what holds on the sites in each. */
  List<AdhesionCase> on(List<AdhesionCase> cases) {
    AdhesionLaw sites = law.orElseGet(() -> new ShareOf(named(cases).law(), share));
    return cases.stream().map(c -> holdsIn(c.name(), cases) ? c.withSites(sites) : c).toList();
  }

  private AdhesionCase named(List<AdhesionCase> cases) {
    return cases.stream().filter(c -> of.filter(c.name()::equals).isPresent()).findFirst().get();
  }

  private boolean holdsIn(String name, List<AdhesionCase> cases) {
    return in.isEmpty() ? !name.equals(cases.get(0).name()) : in.contains(name);
  }

  /** That the cases named are there, and that no site is better than the rail around it. */
  static void check(Values v) {
    Common.whenBoth(
        v,
        SITES,
        PolicyTable.ADHESION,
        (sites, typed) -> {
          List<String> known = typed.stream().map(TypedCase::name).toList();
          boolean good = true;
          for (int i = 0; i < sites.in().size(); i++) {
            good &= isKnown(v, v.in().spot(sites, IN, i), sites.in().get(i), known);
          }
          for (String name : sites.of().stream().toList()) {
            good &= isKnown(v, v.in().spot(sites, PolicyTables.OF), name, known);
          }
          if (good && AdhesionCases.areKnown(typed)) {
            notBetter(v, sites.on(AdhesionCases.of(typed)));
          }
        });
  }

  private static boolean isKnown(Values v, SourcePosition spot, String name, List<String> known) {
    if (known.contains(name)) {
      return true;
    }
    v.in().error(spot, PolicyMistakes.UNKNOWN_CASE.with(name, known, Nearest.to(name, known)));
    return false;
  }

  private static void notBetter(Values v, List<AdhesionCase> cases) {
    for (AdhesionCase each : cases) {
      for (double mps = 0; mps <= FASTEST_MPS && each.sites().isPresent(); mps++) {
        if (each.sites().get().mu(mps) > each.law().mu(mps) + 1e-9) {
          v.error(SITES, PolicyMistakes.SITES_BETTER_THAN_THE_LINE.with(each.name()));
          break;
        }
      }
    }
  }
}
