import { angle, columnOf, count, formula, length, number, smallLength, text } from "../../engine/template/index.js";

const between = "between the rows of the table the logarithm of K runs straight, before the second row K itself";

const VALVE_SETTING = formula(
  "VALVE_SETTING",
  "How far a ball valve must be turned from open to add a loss K",
  { loss: number, row: count, turned: columnOf(angle), added: columnOf(number) },
  angle,
  "IF(row=1,INDEX(turned,2)*loss/INDEX(added,2),VALVE_SETTING_PAST(loss,row,turned,added))",
  between,
);

const VALVE_SETTING_PAST = formula(
  "VALVE_SETTING_PAST",
  "The same past the second row of the table",
  { loss: number, row: count, turned: columnOf(angle), added: columnOf(number) },
  angle,
  "INDEX(turned,row)+(INDEX(turned,row+1)-INDEX(turned,row))*LN(loss/INDEX(added,row))/LN(INDEX(added,row+1)/INDEX(added,row))",
  between,
);

const VALVE_LOSS = formula(
  "VALVE_LOSS",
  "Loss K that a ball valve adds when it is turned from open",
  { setting: angle, row: count, turned: columnOf(angle), added: columnOf(number) },
  number,
  "IF(row=1,INDEX(added,2)*setting/INDEX(turned,2),VALVE_LOSS_PAST(setting,row,turned,added))",
  between,
);

const VALVE_LOSS_PAST = formula(
  "VALVE_LOSS_PAST",
  "The same past the second row of the table",
  { setting: angle, row: count, turned: columnOf(angle), added: columnOf(number) },
  number,
  "INDEX(added,row)*(INDEX(added,row+1)/INDEX(added,row))^((setting-INDEX(turned,row))/(INDEX(turned,row+1)-INDEX(turned,row)))",
  between,
);

const AIR_BREAK_SAID = formula(
  "AIR_BREAK_SAID",
  "Where an air break stands, in words",
  { above: length, above_said: text },
  text,
  '"air break in this line, "&IF(above>0,above_said&" above","higher than")&" the water it ends in and open to the air"',
  "definition",
);

const LINE_END_SAID = formula(
  "LINE_END_SAID",
  "Where a line ends against its water, and what a stop does, in words; nothing where it draws nothing off",
  { above: length, above_said: text, below: smallLength, below_said: text },
  text,
  'IF(above>0,"end "&above_said&" above the water, so that a stop draws nothing off",IF(below>0,"end "&below_said&" below the resting water and no deeper: each stop draws off what stands above it",""))',
  "definition",
);

const SIPHON_SAID = formula(
  "SIPHON_SAID",
  "What keeps a line from drawing off the water that it ends in, in words",
  { stop: text, above: length, above_said: text, below: smallLength, below_said: text },
  text,
  'IF(stop="check valve","check valve in this line, at the manifold",IF(stop="air break",AIR_BREAK_SAID(above,above_said),LINE_END_SAID(above,above_said,below,below_said)))',
  "definition",
);

/** Valves and ends of lines: settings, losses, and what the crew reads of them. */
export const valveFormulas = [
  VALVE_SETTING,
  VALVE_SETTING_PAST,
  VALVE_LOSS,
  VALVE_LOSS_PAST,
  AIR_BREAK_SAID,
  LINE_END_SAID,
  SIPHON_SAID,
];
