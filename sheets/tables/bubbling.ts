import { office, percent, smallLength, table, text } from "../../engine/template/index.js";
import { flowPerWidth } from "../vocabulary/quantities.js";

/** What a bubbling stone can be promised to do: water over its opening, or over an urn's rim, and the drops that fly. */
export const bubblerLooks = table(
  "bubbler_looks",
  "Looks of stones and urns",
  {
    section: "Stones and urns",
    rows: 6,
    filled: "over>0",
    data: [
      { name: "film", over: 0.5, per_rim: 10, drops: 0, said: "a film of water that clings to the stone" },
      { name: "low dome", over: 1, per_rim: 20, drops: 0.15, said: "a low, quiet dome of water" },
      { name: "lively dome", over: 2, per_rim: 40, drops: 0.3, said: "a lively dome of water" },
      { name: "jet", over: 6, drops: 0.6, said: "a standing jet" },
    ],
    note: "Heights, flows over an urn's rim and shares of drops: common practice, no source. Change them to what your customers see on finished work.",
  },
  {
    name: office(text, "Look"),
    over: office(smallLength, "Water over a stone's opening", { least: 0.1, most: 48 }),
    per_rim: office(flowPerWidth, "Flow over an urn's rim", {
      optional: true,
      least: 1,
      most: 1000,
      note: "For the length of the rim. Blank: no look for an urn.",
    }),
    drops: office(percent, "Throw share of drops", {
      default: 0.15,
      least: 0,
      most: 1,
      decimals: 0,
      note: "Of the throw that all the speed of its water would give, if it went sideways. 0: nothing flies.",
    }),
    said: office(text, "Wording for customer", { optional: true }),
  },
);
