import { bore, formula, head, length, number, speed } from "../../engine/template/index.js";
import { flow } from "../../engine/units/quantity.js";
import { waterVolume } from "./quantities.js";

const epanet = "EPANET 2.2 User Manual (US EPA), table of head-loss formulas";
const crane = "Crane Technical Paper 410, page A-26";

const BORE = formula(
  "BORE",
  "Bore of a pipe from its outside diameter and wall",
  { outside: bore, wall: bore },
  bore,
  "outside-2*wall",
  "geometry",
);

const PIPE_SPEED = formula(
  "PIPE_SPEED",
  "Mean speed of the water in a pipe; 0 where no pipe is chosen",
  { flow, bore },
  speed,
  "IF(bore>0,flow/(PI()/4*bore^2),0)",
  "continuity",
);

const VELOCITY_HEAD = formula(
  "VELOCITY_HEAD",
  "Head that water has by its speed: v²/2g",
  { speed },
  head,
  "speed^2/(2*32.174[ft/s²])",
  "energy equation; g 32.174 ft/s²",
);

const FRICTION_COEFFICIENT = formula(
  "FRICTION_COEFFICIENT",
  "Hazen-Williams friction in ft for each (gal/min)^1.852; 448.831 gal/min are one ft³/s; 0 where no pipe is chosen",
  { length: "ft", bore: "in", smoothness: "" },
  "",
  "IF(bore*smoothness>0,4.727*length/(smoothness^1.852*(bore/12)^4.871*448.831^1.852),0)",
  `${epanet}. The hand form with 10.44 and 4.8704 gives 0.2 % less.`,
);

const LOCAL_COEFFICIENT = formula(
  "LOCAL_COEFFICIENT",
  "Loss in fittings in ft for each (gal/min)²; 448.831 gal/min are one ft³/s; 0 where no pipe is chosen",
  { fittings: "", bore: "in" },
  "",
  "IF(bore>0,8/(32.174*PI()^2)*fittings/((bore/12)^4*448.831^2),0)",
  "K v²/2g with g 32.174 ft/s². EPANET rounds 8/(g π²) to 0.02517, 0.09 % less.",
);

const LOSS_AT = formula(
  "LOSS_AT",
  "Head lost at a flow, friction and fittings each to its own power",
  { flow: "gal/min", friction: "", local: "" },
  "ft",
  "friction*flow^1.852+local*flow^2",
  epanet,
);

const squares = "LOSS_AT as q² = h/(m + r (q²)^-0.074): a pass shrinks the error 13 times or more";
/** All bare numbers: head in ft, coefficients for gal/min. */
const lossParts = { head: "", friction: "", local: "" } as const;

const FLOW_SQUARE_PASS = formula(
  "FLOW_SQUARE_PASS",
  "A nearer square of the flow that a head drives through a pipe",
  { square: "", ...lossParts },
  "",
  "head/(local+friction*square^-0.074)",
  squares,
);

const FLOW_SQUARE_TWICE = formula(
  "FLOW_SQUARE_TWICE",
  "The square of the flow two passes nearer",
  { square: "", ...lossParts },
  "",
  "FLOW_SQUARE_PASS(FLOW_SQUARE_PASS(square,head,friction,local),head,friction,local)",
  squares,
);

const FLOW_SQUARED = formula(
  "FLOW_SQUARED",
  "The square of the flow, in gal/min, that a head above 0 drives through a pipe",
  lossParts,
  "",
  "FLOW_SQUARE_TWICE(FLOW_SQUARE_TWICE(1/((friction/head)^1.08+local/head),head,friction,local),head,friction,local)",
  `${squares}; four passes from a start within 4 %`,
);

const FLOW_ABOVE = formula(
  "FLOW_ABOVE",
  "Flow that a head at the manifold drives to an outlet at a height, 0 where it does not reach; row by row",
  { manifold: "ft", stands: "ft", friction: "", local: "" },
  "gal/min",
  "(manifold>stands)*FLOW_SQUARED((manifold-stands)*(manifold>stands)+1e-12,friction,local)^0.5",
  "FLOW_AT_HEAD; a billionth of a millifoot keeps dry outlets from dividing by nothing, and counts for nothing",
);

const FLOW_AT_HEAD = formula(
  "FLOW_AT_HEAD",
  "Flow that a head drives through a pipe: the inverse of LOSS_AT, 0 for no head",
  { head: "ft", friction: "", local: "" },
  "gal/min",
  "IF(head>0,SQRT(FLOW_SQUARED(head,friction,local)),0)",
  squares,
);

const HAZEN_WILLIAMS = formula(
  "HAZEN_WILLIAMS",
  "Head lost to friction in a pipe",
  { flow: "gal/min", length: "ft", bore: "in", smoothness: "" },
  "ft",
  "IF(bore*smoothness>0,4.727*length*(flow/448.831)^1.852/(smoothness^1.852*(bore/12)^4.871),0)",
  epanet,
);

const REYNOLDS = formula(
  "REYNOLDS",
  "Reynolds number of a pipe",
  { speed: "ft/s", bore: "in", viscosity: "ft²/s" },
  "",
  "IF(viscosity>0,speed*bore/12/viscosity,0)",
  "definition",
);

const SWAMEE_JAIN = formula(
  "SWAMEE_JAIN",
  "Darcy friction factor, for Reynolds numbers of 5,000 and more",
  { reynolds: "", roughness: "in", bore: "in" },
  "",
  "0.25/LOG10(roughness/(3.7*bore)+5.74/reynolds^0.9)^2",
  "Swamee and Jain 1976 (from memory)",
);

const DARCY_LOSS = formula(
  "DARCY_LOSS",
  "Head lost to friction by Darcy and Weisbach",
  { factor: number, length, bore, speed },
  head,
  "factor*length/bore*speed^2/(2*32.174[ft/s²])",
  "Darcy-Weisbach equation",
);

const CONTRACTION = formula(
  "CONTRACTION",
  "K of a sudden contraction, on the speed in the small pipe",
  { small: bore, large: bore },
  number,
  "0.5*(1-(small/large)^2)",
  crane,
);

const ENLARGEMENT = formula(
  "ENLARGEMENT",
  "K of a sudden enlargement, on the speed in the small pipe",
  { small: bore, large: bore },
  number,
  "(1-(small/large)^2)^2",
  crane,
);

const REDUCER = formula(
  "REDUCER",
  "K of the step from one bore to another, on the speed in the second",
  { from: bore, to: bore },
  number,
  "IF(from>0,IF(to<from,CONTRACTION(to,from),ENLARGEMENT(from,to)*(to/from)^4),0)",
  `${crane}: K changes base by the fourth power of the bores`,
);

const WATER_IN_PIPE = formula(
  "WATER_IN_PIPE",
  "Water that a full pipe holds",
  { length, bore },
  waterVolume,
  "PI()/4*bore^2*length",
  "geometry",
);

const THICK_WALL_BORE = formula(
  "THICK_WALL_BORE",
  "Bore of a pipe whose wall is 3 % above the least",
  { outside: bore, wall: bore },
  bore,
  "outside-2*1.03*wall",
  "Hydraulic Institute Engineering Data Book, plastic pipe table",
);

/** Pipes: speed, friction, fittings. */
export const pipeFormulas = [
  BORE,
  PIPE_SPEED,
  VELOCITY_HEAD,
  FRICTION_COEFFICIENT,
  LOCAL_COEFFICIENT,
  LOSS_AT,
  FLOW_SQUARE_PASS,
  FLOW_SQUARE_TWICE,
  FLOW_SQUARED,
  FLOW_ABOVE,
  FLOW_AT_HEAD,
  HAZEN_WILLIAMS,
  REYNOLDS,
  SWAMEE_JAIN,
  DARCY_LOSS,
  CONTRACTION,
  ENLARGEMENT,
  REDUCER,
  WATER_IN_PIPE,
  THICK_WALL_BORE,
];
