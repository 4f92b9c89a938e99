import { flow, formula, length, smallLength, speed } from "../../engine/template/index.js";

const manual =
  "USBR Water Measurement Manual, 2001, chapter 14, vertical pipes (after Stock 1955): inches and gal/min; within 15 % as a weir, 10 % as a jet (Bos 1989)";

const PIPE_WEIR = formula(
  "PIPE_WEIR",
  "Flow that wells up over the rim of an upright open pipe, up to 0.37 of its mouth high",
  { mouth: "in", over: "in" },
  "gal/min",
  "6.17*mouth^1.25*over^1.35",
  manual,
);

const PIPE_JET = formula(
  "PIPE_JET",
  "Flow that stands as a jet over an upright open pipe, from 1.4 of its mouth high",
  { mouth: "in", over: "in" },
  "gal/min",
  "5.01*mouth^1.99*over^0.53",
  manual,
);

const PIPE_BETWEEN = formula(
  "PIPE_BETWEEN",
  "Flow between weir and jet: straight in logarithms from the end of the one to the beginning of the other",
  { mouth: "in", over: "in" },
  "gal/min",
  "1.612*mouth^2.6*(over/(0.37*mouth))^(LN(3.715*mouth^-0.08)/1.3308)",
  "interpolation of our own between the two laws: 6.17×0.37^1.35 = 1.612, 5.01×1.4^0.53/1.612 = 3.715, ln(1.4/0.37) = 1.3308",
);

const BUBBLE_FLOW = formula(
  "BUBBLE_FLOW",
  "Flow that stands so high over the mouth of an upright pipe, or of a drill hole",
  { mouth: smallLength, over: smallLength },
  flow,
  "IF(over<=0.37*mouth,PIPE_WEIR(mouth,over),IF(over<1.4*mouth,PIPE_BETWEEN(mouth,over),PIPE_JET(mouth,over)))",
  manual,
);

const JET_SPEED = formula(
  "JET_SPEED",
  "Speed of water that has fallen, or will rise, so far: √(2gh)",
  { height: length },
  speed,
  "SQRT(2*32.174[ft/s²]*height)",
  "free fall; g 32.174 ft/s²",
);

const DRIFT = formula(
  "DRIFT",
  "How far a wind carries what falls so far, were it to go as fast as the wind",
  { wind: speed, drop: length },
  length,
  "wind*SQRT(2*drop/32.174[ft/s²])",
  "free fall; g 32.174 ft/s²",
);

const FILM = formula(
  "FILM",
  "Thickness of a smooth film of water that runs down an upright wall: (3νq/g)^(1/3)",
  { flow: "ft³/s", around: "ft", viscosity: "10⁻⁵ ft²/s" },
  "ft",
  "IF(around>0,(3*viscosity*0.00001*flow/around/32.174)^(1/3),0)",
  "Nusselt 1916, laminar film (from memory)",
);

/** Water that wells up, stands and runs down. */
export const bubblingFormulas = [PIPE_WEIR, PIPE_JET, PIPE_BETWEEN, BUBBLE_FLOW, JET_SPEED, DRIFT, FILM] as const;
