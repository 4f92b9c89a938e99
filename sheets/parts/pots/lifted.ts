import { check } from "../../../engine/template/index.js";
import type { Cells } from "../added.js";

/** The heaviest pot against crew and machine. */
export const potsLifted: Cells = {
  pots_moved: check(
    "OR(heaviest_pot<=0,IF(by_hand,heaviest_pot<=hand_moved,heaviest_pot+rigging_weight<=machine_lift))",
    "The heaviest pot weighs {heaviest_pot} empty; the crew moves {hand_moved} by hand, the machine lifts {lift_said}. Choose a lighter pot in pots on sheet Decisions.",
    { label: "Pot too heavy to set" },
  ),
};
