import { calc, count, length, text } from "../../../engine/template/index.js";
import { counted } from "../../vocabulary/counted.js";
import type { Cells } from "../added.js";

const customer = { reader: "customer" } as const;

/** What the customer sees and hears of falls, stream and pools. */
export const fallsInProposal: Cells = {
  levels_in_use: calc(count, "SUMPRODUCT((levels.design_flow>0)*1)", "Levels in use"),
  lips_in_use: calc(count, "SUMPRODUCT((falls.width_counted>0)*1)", "Lips in use"),
  falls_said: calc(text, `~{${counted("levels_in_use", "fall", "falls")}}`, "Falls, counted in words", customer),
  highest_drop_said: calc(text, "~{highest_drop}", "Highest fall, in words", customer),
  highest_drop: calc(length, "MAX(falls.drop_counted)", "Highest fall"),
  loudest_said: calc(
    text,
    '"the "&IF(levels_in_use>1,"highest ","")&"fall, "&highest_drop_said',
    "Loudest fall, in words",
  ),
  course_said: calc(
    text,
    '~{falls_said}{IF(runs_length>0," and "&runs_length_said&" of stream","")}',
    "Course in words",
  ),
  runs_length_said: calc(text, "~{runs_length}", "Stream length, in words", customer),
  pools_passed: calc(
    text,
    'IF(LEN(pools_in_words)>0,"On its way it stands open in "&pools_in_words&". ","")',
    "Pools that the water passes",
  ),
  see_and_hear: calc(
    text,
    "~Water rises among the stones at the top, runs over {course_said}, and sinks away through gravel at the bottom, back to where it came from. {pools_passed}There is no open pond at the bottom. What you will hear most is {loudest_said}; {valves_said} lets us set the water louder or quieter with you on the last day.",
    "What you see and hear",
  ),
};

/** Words of pages that several trades share. */
export const wordsOfFalls: Cells = {
  fed_said: calc(text, 'IF(lips_in_use>1,"the falls","the fall")', "Where the water goes"),
  crates_from: calc(text, '"the end that the stream enters"', "Crates are laid from"),
  crates_less: calc(text, '"the place of the vault"', "Crates are left out for"),
  topsoil_ends: calc(text, '"to the back of the bank stone; none in the stream"', "How far topsoil goes"),
  run_before: calc(text, '"Before boulders, banks and cobble are set."', "When the test is run"),
  run_said: calc(text, '"run all falls"', "What the test runs"),
  run_marked: calc(text, '"Mark the water\'s edge and where each fall lands"', "What the test shows"),
  lights_first: calc(text, '"at the foot of the falls and in pools first"', "First places of lights"),
  stakes_said: calc(text, '"Stake each lip by the table"', "What is staked"),
};
