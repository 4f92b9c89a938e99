/** A run of one bore: length in feet, bore in inches, `loss` the sum of its local coefficients K. */
export interface Pipe {
  length: number;
  bore: number;
  loss: number;
}

/** A pipe from the manifold to a free outlet, `height` feet above the basin's running water. */
export interface Branch extends Pipe {
  height: number;
}

/** Curve points (gal/min, ft) at full speed, flow rising and head falling; speed as a fraction. */
export interface Pump {
  curve: [flow: number, head: number][];
  speed: number;
}

/**
 * A pump in a basin at head 0, a main, a manifold and 1 to 8 branches to free outlets.
 * `roughness` is the Hazen-Williams C of all pipes. The exit loss is part of a branch's `loss`.
 */
export interface PipeNetwork {
  roughness: number;
  pump: Pump;
  main: Pipe;
  branches: Branch[];
}

/** Flows in gal/min, heads in feet; `flows` in the order of the branches, zero where one runs dry. */
export interface NetworkSolution {
  total: number;
  manifoldHead: number;
  pumpHead: number;
  flows: number[];
}

/**
 * The pump curve with a point at zero flow: its first line is carried back to zero when the curve
 * starts later. Past the last point the last line goes on, here and in every solver.
 */
export function curveFromZero(curve: Pump["curve"]): Pump["curve"] {
  const [first, second] = curve;
  if (!first || !second) {
    throw new RangeError(`Pump curve has ${curve.length} points; it needs at least 2: add points`);
  }
  if (first[0] === 0) return curve;
  const slope = (second[1] - first[1]) / (second[0] - first[0]);
  return [[0, first[1] - slope * first[0]], ...curve];
}
