import { count, lines, number, precise, published, table, text } from "../../engine/template/index.js";

const crane = "Crane Technical Paper 410, pages A-27 to A-29";
const multiplier = (label: string, value: number, source = crane) =>
  published(number, label, { value, source, decimals: 0 });

/** Losses in fittings: multiples of the friction factor, or K itself where the size does not matter. */
export const fittings = lines("Fittings, K over fT", {
  elbow_90: multiplier("90° elbow", 30),
  elbow_45: multiplier("45° elbow", 16),
  tee_run: multiplier("Tee, straight through", 20),
  ball_valve: multiplier("Ball valve, open", 3),
  swing_check: multiplier("Swing check valve", 100, `${crane}; 50 for the easier pattern`),
  exit_loss: published(precise, "Exit loss, K", {
    value: 1,
    source: "Crane Technical Paper 410, page A-29",
    decimals: 2,
  }),
});

/** How a line leaves the manifold. */
export const tees = table(
  "tees",
  "Manifold fittings",
  {
    rows: 5,
    data: [
      { name: "square tee", multiple: 60, pieces: 1, source: crane },
      {
        name: "sweep along the flow",
        multiple: 20,
        pieces: 1,
        source: "Crane Technical Paper 410, page A-29 (from memory): a bend of radius one bore",
      },
      {
        name: "sweep against the flow",
        multiple: 75,
        pieces: 1,
        source: "common practice, no source: a quarter more than a square tee",
      },
      {
        name: "end of the manifold",
        multiple: 20,
        pieces: 0,
        source: `${crane}: tee, straight through`,
      },
      { name: "no tee", multiple: 0, pieces: 0, source: "a pipe of its own" },
    ],
  },
  {
    name: published(text, "Manifold fitting", { source: crane }),
    multiple: published(number, "K over fT", { source: crane, decimals: 0 }),
    pieces: published(count, "Tees needed", {
      source: "the run of the tee before, or a pipe of its own, takes none",
    }),
    source: published(text, "Source", { source: crane }),
  },
);

/** How the main begins. */
export const inletFittings = table(
  "inlet_fittings",
  "Inlet fittings",
  {
    rows: 3,
    data: [
      {
        name: "bulkhead fitting, flush",
        loss: 0.5,
        source: "Crane Technical Paper 410, page A-29",
      },
      {
        name: "pipe that projects",
        loss: 0.78,
        source: "Crane Technical Paper 410, page A-29 (from memory)",
      },
      { name: "at the pump's own outlet", loss: 0, source: "counted in the pump's curve" },
    ],
  },
  {
    name: published(text, "Inlet fitting", { source: crane }),
    loss: published(number, "K", { source: crane }),
    source: published(text, "Source", { source: crane }),
  },
);
