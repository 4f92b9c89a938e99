import { byHand, error, exact, given, highPrecision, illegal, standard } from "./case.js";

export const statisticsCases = [
  given("BINOM.DIST", [3, 10, 0.3, true], 0.6496107184, exact),
  given("BINOM.DIST", [3, 10, 0.3, false], 0.266827932, exact),
  given("BINOM.DIST", [300, 600, 0.5, true], 0.5162799656674898, exact),
  given("BINOM.DIST", [150, 400, 0.35, false], 0.023904528644747864, exact),
  given("BINOM.DIST", [20, 365, 0.1, true], 0.001381613902441802, exact),
  given("BINOM.DIST", [10, 300, 0.25, true], 8.698610465914286e-25, exact),
  given("BINOM.DIST", [0, 10, 0, false], 1, byHand),
  given("BINOM.DIST", [11, 10, 0.5, false], error("#NUM!"), standard, illegal),
  given("BINOM.DIST", [5, 10, 1.5, true], error("#NUM!"), standard, illegal),
  // at most so many failures before a number of successes: the negative binomial distribution
  given("BINOM.DIST", [3, 13, 0.7, true], 0.000651960009, exact),
  given("BINOM.DIST", [200, 500, 0.4, true], 0.5194108228883499, exact),
  given("BINOM.DIST", [8, 28, 0.3, true], 0.5275195196468289, exact),
  given("BINOM.INV", [20, 0.3, 0.8], 8, exact),
  given("BINOM.INV", [365, 0.1, 0.8], 41, exact),
  given("BINOM.INV", [400, 0.35, 0.001], 111, exact),
  given("BINOM.INV", [3, 0.5, 0.5], 1, exact),
  given("BINOM.INV", [10, 0.5, 1.2], error("#NUM!"), standard, illegal),
  given("NORM.S.INV", [0.975], 1.9599639845400543, highPrecision),
  given("NORM.S.INV", [0.8], 0.8416212335729142, highPrecision),
  given("NORM.S.INV", [0.001], -3.0902323061678136, highPrecision),
  given("NORM.S.INV", [1e-10], -6.361340902404057, highPrecision),
  given("NORM.S.INV", [0.5], 0, byHand),
  given("NORM.S.INV", [0], error("#NUM!"), standard, illegal),
  given("NORM.S.INV", [1], error("#NUM!"), standard, illegal),
];
