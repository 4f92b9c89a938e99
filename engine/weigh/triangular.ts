import type { Range } from "../job/record.js";

/**
 * The value below which a share `p` of a triangular distribution lies: the inverse of its
 * cumulative distribution (NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.6, from
 * memory; Johnson 1997, "The triangular distribution as a proxy for the beta distribution in
 * risk analysis", from memory). Of the distributions on three points it is the one with no
 * further parameter, and it puts more weight on the ends than the beta of PERT does.
 */
export function triangular({ low, likely, high }: Range, p: number): number {
  if (low === high) return low;
  const peak = (likely - low) / (high - low);
  return p < peak
    ? low + Math.sqrt(p * (high - low) * (likely - low))
    : high - Math.sqrt((1 - p) * (high - low) * (high - likely));
}
