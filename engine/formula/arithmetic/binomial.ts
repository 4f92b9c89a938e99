/**
 * The probability of exactly `successes` in `trials`, where one trial succeeds with
 * probability `p` and fails with `q` = 1 - p (both given, so that neither loses digits).
 * Good to some 1e-13 for a few hundred trials: one product, kept near 1 on the way.
 */
export function binomialAt(successes: number, trials: number, p: number, q: number): number {
  let product = 1;
  let failures = trials - successes;
  for (let i = 1; i <= successes; i += 1) {
    product *= ((trials - successes + i) / i) * p;
    while (product > 1 && failures > 0) {
      product *= q;
      failures -= 1;
    }
  }
  return product * q ** failures;
}

/** The probability of at most `successes` in `trials`; arguments as for `binomialAt`. */
export function binomialUpTo(successes: number, trials: number, p: number, q: number): number {
  if (p === 0 || successes >= trials) return 1;
  if (q === 0) return 0;
  // From the likeliest count outwards: terms in the far tails may be too small to start from.
  const start = Math.min(successes, Math.floor((trials + 1) * p));
  const first = binomialAt(start, trials, p, q);
  let total = first;
  for (let i = start, term = first; i > 0 && term > 0; i -= 1) {
    term *= (i * q) / ((trials - i + 1) * p);
    total += term;
  }
  for (let i = start, term = first; i < successes && term > 0; i += 1) {
    term *= ((trials - i) * p) / ((i + 1) * q);
    total += term;
  }
  return Math.min(total, 1);
}
