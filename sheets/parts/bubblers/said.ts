import { calc, count, length, lines, table, text } from "../../../engine/template/index.js";
import type { Cells } from "../added.js";
import { bubblersTable, stoneInUse } from "./bubblers-table.js";

const { rows } = bubblersTable;
const customer = { reader: "customer" } as const;

/** Each stone as people read of it. */
export const bubblersSaid = table(
  "bubblers_said",
  "Stones and urns in words",
  { rows, beside: "bubblers", filled: stoneInUse },
  {
    number: calc(count, (row) => String(row), "Row"),
    does: calc(text, 'PICK(bubbler_looks.said,bubbler_looks.name,look)&""', "What it does"),
    does_said: calc(text, "IF(LEN(does)>0,does,look)", "What it does, in words"),
    size_crew: calc(text, "~{tall|0} tall, {wide|0} by {deep|0}", "Size, for the crew", { reader: "crew" }),
    about: calc(text, "~about {tall|0} tall", "Size, for the customer", customer),
    weight_said: calc(text, "~{weighs|0}", "Weight", { reader: "crew" }),
    spot: calc(text, "~{middle} along, {aside} across", "Middle, for the crew", { reader: "crew" }),
    piers_said: calc(
      text,
      'FIXED(pier_count,0)&IF(pier_count=1," pier of "," piers of ")&FIXED(pier_blocks,0)&" blocks from the basin\'s bottom"',
      "Piers, for the crew",
    ),
    base_said: calc(
      text,
      'IF(on_piers,IF(pier_count=1,"on its pier","on its piers"),"on the stone over the crates, bedded level")',
      "Base, for the crew",
    ),
    pinned_said: calc(text, 'IF(pinned,"; pinned or footed by its plan","")', "Held, for the crew"),
    ordered: calc(text, "~{tall|0} tall, {wide|0} by {deep|0}{hole_said}", "As ordered", { reader: "supplier" }),
    hole_said: calc(text, 'IF(OR(is_urn,drilled="by us"),"",hole_words)', "Hole, as ordered"),
    hole_words: calc(text, "~, drilled {hole} through from top to foot", "Hole, in words", { reader: "supplier" }),
  },
);

/** What the customer sees and hears. */
export const stonesInProposal: Cells = {
  fed_said: calc(text, 'IF(stones_counted>1,"the stones","the stone")', "Where the water goes"),
  stones_noun: calc(text, 'IF(stones_counted=1,"stone","stones")', "Stones, as a noun"),
  urns_noun: calc(text, 'IF(stones_counted=1,"urn","urns")', "Urns, as a noun"),
  stones_said: calc(
    text,
    'FIXED(stones_counted,0)&" "&IF(urns_counted=0,stones_noun,IF(urns_counted=stones_counted,urns_noun,"stones and urns"))',
    "Stones, counted in words",
  ),
  tallest_said: calc(text, "~{tallest_stone|0}", "Tallest, in words", customer),
  tall_words: calc(
    text,
    'IF(stones_counted>1,", the tallest "&tallest_said,", "&tallest_said&" tall")',
    "Height, in words",
  ),
  see_and_hear: calc(
    text,
    "~Water wells up out of {stones_said}{tall_words}, runs down the sides and sinks away between cobble, into a basin that nobody sees. There is no open pond. You will hear a murmur, louder the higher the water stands; {valves_said} lets us set it with you on the last day.",
    "What you see and hear",
  ),
};

/** Words of pages that several trades share. */
export const wordsOfStones: Cells = {
  manifold_place: calc(text, '", beside the basin"', "Manifold place, in words"),
  crates_from: calc(text, '"the end that the plan is measured from"', "Crates are laid from"),
  crates_less: calc(
    text,
    'IF(pier_blocks>0,"the places of vault and piers","the place of the vault")',
    "Crates are left out for",
  ),
  topsoil_ends: calc(text, '"to the edge of the cobble"', "How far topsoil goes"),
  run_before: calc(text, '"Before the cobble covers the liner\'s edge."', "When the test is run"),
  run_said: calc(text, '"run every stone"', "What the test runs"),
  run_marked: calc(text, '"See how far drops fly, in wind too: mark it"', "What the test shows"),
  lights_first: calc(text, '"at the foot of the stones, shining up the wet side"', "First places of lights"),
  stakes_said: calc(
    text,
    '"Stake the corners of the basin and each stone\'s middle: along from the end where the crates begin, across from the side of the vault"',
    "What is staked",
  ),
};

/** The heaviest of them, for crew and machine. */
export const heaviestBubbler: Cells = {
  heaviest_row: calc(count, "PLACE_OR_ZERO(bubblers.weighs,heaviest_bubbler)", "Row of heaviest stone", {
    working: true,
    zero: "none",
  }),
  heaviest_said: calc(
    text,
    'IF(stones_counted>0,INDEX(bubblers.name,MAX(1,heaviest_row))&"","no stone")',
    "Heaviest stone",
    {
      working: true,
      note: "The first of those as heavy.",
    },
  ),
};

export const lastStone = lines("Stones in use", {
  stones_told: calc(count, "MAX(bubblers_said.number)", "Last stone in use"),
  farthest_splash: calc(length, "MAX(bubblers.splash)", "Farthest splash"),
});
