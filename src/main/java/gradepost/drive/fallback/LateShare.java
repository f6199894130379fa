package gradepost.drive.fallback;

import gradepost.policy.Policy;

/**
 * How many of the runs drawn may be late. A share is kept where it is so with 95 % confidence; not
 * one run may be late where too few are drawn to tell. A share of all moves no point at all.
 *
 * @param none whether not one may be late, whatever the share
 */
record LateShare(double share, boolean none) {
  LateShare(Policy policy, boolean none) {
    this(policy.practice().correction().lateShare(), none);
  }

  /** The most of so many runs that may be late. */
  int mostOf(int runs) {
    if (share >= 1) {
      return runs;
    }
    int most = 0;
    while (!none && most < runs && BinomialBound.upper(most + 1, runs) <= share) {
      most++;
    }
    return most;
  }

  /** Whether so many of so many runs are few enough. */
  boolean kept(double lateShare, int runs) {
    return Math.round(lateShare * runs) <= mostOf(runs);
  }
}
