package org.vestibule.simulator;

/**
 * How large a share can still be after so few were seen.
 *
 * <p>Clopper and Pearson, Biometrika 26 (1934) 404-413 (from memory): the exact upper bound for k
 * of n at confidence c is the p at which k or fewer are seen with probability 1 - c, that is where
 * the sum of C(n,i) p^i (1-p)^(n-i) for i from 0 to k is 1 - c. For none of n it is 1 -
 * (1-c)^(1/n), about 3/n at 95 % (the "rule of three": Hanley and Lippman-Hand, JAMA 249 (1983)
 * 1743-1745; from memory).
 */
final class UpperBound {

  private static final int HALVINGS = 60;

  private UpperBound() {}

  /** The one-sided bound; the two-sided 95 % interval ends at the one-sided one of 0.975. */
  static double oneSided(long seen, long of, double confidence) {
    if (seen < 0 || seen > of || of < 1) {
      throw new IllegalArgumentException(seen + " of " + of + " is no share");
    }
    if (seen == of) {
      return 1;
    }
    double low = (double) seen / of;
    double high = 1;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (low + high) / 2;
      if (logAtMost(seen, of, middle) > Math.log(1 - confidence)) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return high;
  }

  /** Logarithm of the probability of seeing at most so many. */
  private static double logAtMost(long seen, long of, double p) {
    double odds = Math.log(p) - Math.log1p(-p);
    double term = of * Math.log1p(-p);
    double sum = term;
    for (long i = 1; i <= seen; i++) {
      term += Math.log((double) (of - i + 1) / i) + odds;
      double larger = Math.max(sum, term);
      sum = larger + Math.log(Math.exp(sum - larger) + Math.exp(term - larger));
    }
    return sum;
  }
}
