import { area, flow, formula, length, number } from "../../engine/template/index.js";

const manning = "Manning formula, US units: Chow, Open-Channel Hydraulics, 1959 (from memory)";

const CHANNEL_AREA = formula(
  "CHANNEL_AREA",
  "Water's cross-section in a channel with a flat bed and sloping sides",
  { width: length, depth: length, side: number },
  area,
  "(width+side*depth)*depth",
  "geometry; `side` is run over rise",
);

const MANNING_FLOW = formula(
  "MANNING_FLOW",
  "Flow of a channel at a depth",
  { depth: "ft", width: "ft", side: "", roughness: "", slope: "" },
  "ft³/s",
  "1.486/roughness*SQRT(slope)*((width+side*depth)*depth)^(5/3)/(width+2*depth*SQRT(1+side^2))^(2/3)",
  manning,
);

const MANNING_SECTION = formula(
  "MANNING_SECTION",
  "What a flow asks of the section: area^(5/3) over wetted edge^(2/3), in feet",
  { flow: "ft³/s", roughness: "", slope: "" },
  "",
  "flow*roughness/(1.486*SQRT(slope))",
  manning,
);

const WIDE_DEPTH = formula(
  "WIDE_DEPTH",
  "Depth in a channel so wide that its sides do not matter: where the passes start",
  { section: "", width: "ft" },
  "ft",
  "(section/width)^0.6",
  manning,
);

const newton = `${manning}; Newton's method`;

const MANNING_GAP = formula(
  "MANNING_GAP",
  "Logarithm of the section wanted over that of a depth, all in feet",
  { depth: "", section: "", width: "", side: "" },
  "",
  "LN(section)-5/3*LN((width+side*depth)*depth)+2/3*LN(width+2*depth*SQRT(1+side^2))",
  newton,
);

const MANNING_RISE = formula(
  "MANNING_RISE",
  "Power of the depth by which the section grows there, all in feet",
  { depth: "", width: "", side: "" },
  "",
  "5/3*(width+2*side*depth)/(width+side*depth)-2/3*2*depth*SQRT(1+side^2)/(width+2*depth*SQRT(1+side^2))",
  newton,
);

const MANNING_PASS = formula(
  "MANNING_PASS",
  "A nearer depth: Newton's step on the logarithms of section and depth",
  { depth: "ft", section: "", width: "ft", side: "" },
  "ft",
  "depth*EXP(MANNING_GAP(depth,section,width,side)/MANNING_RISE(depth,width,side))",
  newton,
);

const ferguson =
  "Ferguson 2007, Water Resources Research 43, W05427: variable-power law; a1 6.5 and a2 2.5 as in a research institute's published program";

const HYDRAULIC_RADIUS = formula(
  "HYDRAULIC_RADIUS",
  "Hydraulic radius of a channel with a flat bed and sloping sides: area over wetted edge",
  { width: length, depth: length, side: number },
  length,
  "(width+side*depth)*depth/(width+2*depth*SQRT(1+side^2))",
  "geometry; `side` is run over rise",
);

/** The law as text: mean speed over shear velocity, by radius and size of stone. */
const resistance = "6.5*2.5*radius/stone/SQRT(6.5^2+2.5^2*(radius/stone)^(5/3))";

const STONE_RESISTANCE = formula(
  "STONE_RESISTANCE",
  "Mean speed over shear velocity, √(8/f), of water over stone of a size (D84), shallow or deep",
  { radius: "ft", stone: "ft" },
  "",
  resistance,
  ferguson,
);

const STREAM_FLOW = formula(
  "STREAM_FLOW",
  "Flow of a cross-section over stone of a size (D84); g 32.174 ft/s²",
  { area: "ft²", radius: "ft", stone: "ft", slope: "" },
  "ft³/s",
  `area*SQRT(32.174*radius*slope)*${resistance}`,
  ferguson,
);

const CHANNEL_FLOW = formula(
  "CHANNEL_FLOW",
  "Flow of a channel with sloping sides over stone of a size (D84), at a depth",
  { width: length, depth: length, side: number, stone: length, slope: number },
  flow,
  "STREAM_FLOW(CHANNEL_AREA(width,depth,side),HYDRAULIC_RADIUS(width,depth,side),stone,slope)",
  ferguson,
);

const rickenmann =
  "Rickenmann and Recking 2011, Water Resources Research 47, W07538 (from memory), equation 22, as in a research institute's published program";

const STONE_FLOW = formula(
  "STONE_FLOW",
  "Flow per width as a bare number, by the size of the stone and the slope; feet and seconds",
  { flow: "", width: "", stone: "", slope: "" },
  "",
  "flow/width/SQRT(32.174*slope*stone^3)",
  rickenmann,
);

const STREAM_START = formula(
  "STREAM_START",
  "Depth in a channel so wide that its sides do not matter: where the passes start",
  { flow: "ft³/s", width: "ft", stone: "ft", slope: "" },
  "ft",
  "flow/width/(1.443*SQRT(32.174*slope*stone)*STONE_FLOW(flow,width,stone,slope)^0.6" +
    "*(1+(STONE_FLOW(flow,width,stone,slope)/43.78)^0.8214)^-0.2435)",
  rickenmann,
);

const RADIUS_POWER = formula(
  "RADIUS_POWER",
  "Power of the hydraulic radius by which the mean speed grows: 3/2 shallow to 2/3 deep",
  { radius: "ft", stone: "ft" },
  "",
  "1.5-5/6/(1+(6.5/2.5)^2*(stone/radius)^(5/3))",
  `${ferguson}; its slope on logarithms`,
);

const STREAM_PASS = formula(
  "STREAM_PASS",
  "A nearer depth: Newton's step on the logarithms of flow and depth",
  { depth: "ft", radius: "ft", share: "", power: "", width: "ft", side: "" },
  "ft",
  "depth*share^((width+side*depth)" + "/((1+power)*(width+2*side*depth)-2*power*SQRT(1+side^2)*radius))",
  "Newton's method; `share` is the flow wanted over the flow at the depth",
);

const NEARER_DEPTH = formula(
  "NEARER_DEPTH",
  "A nearer depth of a flow over stone of a size (D84), from a depth and its hydraulic radius",
  { flow, depth: length, radius: length, width: length, side: number, stone: length, slope: number },
  length,
  "STREAM_PASS(depth,radius,flow/STREAM_FLOW(CHANNEL_AREA(width,depth,side),radius,stone,slope),RADIUS_POWER(radius,stone),width,side)",
  ferguson,
);

const FROUDE = formula(
  "FROUDE",
  "Froude number: 1 and above, the water shoots",
  { speed: "ft/s", area: "ft²", surface: "ft" },
  "",
  "speed/SQRT(32.174*area/surface)",
  "definition; g 32.174 ft/s²",
);

/** Streams: area, normal depth over stone and by Manning, Froude number. */
export const channelFormulas = [
  CHANNEL_AREA,
  MANNING_FLOW,
  MANNING_SECTION,
  WIDE_DEPTH,
  MANNING_GAP,
  MANNING_RISE,
  MANNING_PASS,
  HYDRAULIC_RADIUS,
  STONE_RESISTANCE,
  STREAM_FLOW,
  CHANNEL_FLOW,
  STONE_FLOW,
  STREAM_START,
  RADIUS_POWER,
  STREAM_PASS,
  NEARER_DEPTH,
  FROUDE,
];
