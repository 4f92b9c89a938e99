import { area, formula, length, number } from "../../engine/template/index.js";

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

const DEPTH_PASS = formula(
  "DEPTH_PASS",
  "A nearer depth: Newton's step on the logarithms of section and depth",
  { depth: "ft", section: "", width: "ft", side: "" },
  "ft",
  "depth*EXP((LN(section)-5/3*LN((width+side*depth)*depth)+2/3*LN(width+2*depth*SQRT(1+side^2)))" +
    "/(5/3*(width+2*side*depth)/(width+side*depth)" +
    "-2/3*2*depth*SQRT(1+side^2)/(width+2*depth*SQRT(1+side^2))))",
  `${manning}; Newton's method`,
);

const FROUDE = formula(
  "FROUDE",
  "Froude number: 1 and above, the water shoots",
  { speed: "ft/s", area: "ft²", surface: "ft" },
  "",
  "speed/SQRT(32.174*area/surface)",
  "definition; g 32.174 ft/s²",
);

/** Streams: area, normal depth. */
export const channelFormulas = [
  CHANNEL_AREA,
  MANNING_FLOW,
  MANNING_SECTION,
  WIDE_DEPTH,
  DEPTH_PASS,
  FROUDE,
];
