/** What the tests use of a statistics library that comes without types. */
declare module "jstat" {
  const library: {
    readonly jStat: {
      readonly studentt: {
        inv(probability: number, freedom: number): number;
        cdf(t: number, freedom: number): number;
      };
      readonly lognormal: { inv(probability: number, mean: number, deviation: number): number };
      readonly beta: { inv(probability: number, a: number, b: number): number };
    };
  };
  export default library;
}
