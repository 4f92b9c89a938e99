import jstat from "jstat";
import { describe, expect, test } from "vitest";
import { studentInverse } from "../../engine/formula/arithmetic/student.js";

const { studentt } = jstat.jStat;

// NIST/SEMATECH e-Handbook of Statistical Methods, section 1.3.6.7.2, critical values of Student's t (from memory):
// one-sided 0.90, 0.95, 0.975, 0.99 are two-sided 0.2, 0.1, 0.05, 0.02
describe("the published table of t", () => {
  test.each([
    [1, 3.078, 6.314, 12.706, 31.821],
    [2, 1.886, 2.92, 4.303, 6.965],
    [5, 1.476, 2.015, 2.571, 3.365],
    [10, 1.372, 1.812, 2.228, 2.764],
    [30, 1.31, 1.697, 2.042, 2.457],
    [100, 1.29, 1.66, 1.984, 2.364],
  ])("%i degrees of freedom", (freedom, ...critical) => {
    const found = [0.2, 0.1, 0.05, 0.02].map((chance) => studentInverse(chance, freedom));
    expect(found.map((t) => Number(t.toFixed(3)))).toEqual(critical);
  });
});

// jstat 1.9.6, a general library of statistics, by its incomplete beta function: good to some nine digits
describe("as a library has it", () => {
  const chances = [0.001, 0.01, 0.02, 0.05, 0.1, 0.2, 0.4, 0.5, 0.8];
  test.each([1, 2, 3, 4, 7, 12, 25, 44, 120, 400])("%i degrees of freedom", (freedom) => {
    for (const chance of chances) {
      const theirs = studentt.inv(1 - chance / 2, freedom);
      expect(Math.abs(studentInverse(chance, freedom) / theirs - 1)).toBeLessThan(1e-7);
    }
  });
});
