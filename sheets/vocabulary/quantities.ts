import { quantity } from "../../engine/template/index.js";

// What only this trade measures; the general quantities are the engine's.
export const waterVolume = quantity("water volume", "gal", 0);
export const soilVolume = quantity("soil volume", "yd³", 1);
export const flowPerWidth = quantity("flow per width of lip", "gal/h per in", 0, 1);
export const waterLoss = quantity("depth a day", "in/day", 2, 1);
export const massPerLength = quantity("mass per length", "ton/ft", 2);
export const rainRate = quantity("rain rate", "in/h", 2, 0);
export const roughnessHeight = quantity("roughness height", "in", 5, 4);
export const vaporPressure = quantity("vapor pressure", "inHg", 3);
export const viscosity = quantity("viscosity", "10⁻⁵ ft²/s", 3);
export const heatOfMass = quantity("heat of a mass", "Btu/lb", 0);
export const conductorArea = quantity("area of a conductor", "cmil", 0, 2);
