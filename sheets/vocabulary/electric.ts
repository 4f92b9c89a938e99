import { formula } from "../../engine/template/index.js";

const VOLTAGE_DROP = formula(
  "VOLTAGE_DROP",
  "Voltage lost out and back along two copper conductors; 0 where no wire is chosen",
  { amperes: "A", one_way: "ft", size: "cmil" },
  "V",
  "IF(size>0,2*12.9*amperes*one_way/size,0)",
  "2 K I L / cmil with K 12.9 ohm cmil/ft for copper: notes to NEC Chapter 9 (from memory)",
);

/** Electric circuits: what a cable loses. */
export const electricFormulas = [VOLTAGE_DROP] as const;
