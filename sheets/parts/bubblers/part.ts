import { bullet, bulletEachRow, line, under } from "../../plan/page-line.js";
import { rockTable } from "../../tables/rock-table.js";
import { bubblingFormulas } from "../../vocabulary/bubbling.js";
import { stoneFormulas } from "../../vocabulary/stone.js";
import { weirFormulas } from "../../vocabulary/weir.js";
import { item } from "../goods.js";
import { gravelRaked } from "../gravel.js";
import { hired } from "../hire.js";
import { part } from "../part.js";
import { production, withMachine } from "../rates.js";
import { task } from "../task.js";
import { stoneDelivered } from "../truck.js";
import { bubblersBlocks } from "./bubblers.js";
import { bubblersTable } from "./bubblers-table.js";
import { cover } from "./cover.js";
import { drawingsForCrew, elevation, elevationForCustomer, planOfStones } from "./drawing.js";
import { bubblerPoints } from "./drawing-points.js";
import { pricePerStone } from "./price.js";
import { bubblersSaid, heaviestBubbler, lastStone, stonesInProposal, wordsOfStones } from "./said.js";

const rows = Array.from({ length: bubblersTable.rows }, (_, i) => i + 1);

const piers = "Build piers under the stones";
const drill = "Core-drill stones";
const set = "Set stones and urns, fit their pipes";
const fill = "Fill stone around and over the crates";
const rake = "Spread cobble over the basin";

export const bubblers = part("Bubblers", "Stones and urns that bubble: look, flow, weight, base and splash of each.", {
  section: "Stones and urns",
  title: "Bubbling stones",
  purposes: {
    Piping:
      "A line for each stone and the main: flow and head that each needs, its valve setting, and what the main loses.",
    Basin: "The buried basin: does it hold the water that comes back at a stop, and the days between fills?",
    Liner: "The liner of the basin, its cut from stocked rolls, and the people to carry it.",
    Stone: "Cobble and fill by weight, and the heaviest stone against the machine.",
    Drawings: "The stones and the basin, drawn from this bid's figures.",
  },
  words: {
    "in stream": "on stones",
    "in the stream": "On the stones",
    "pools and pots": "urns",
    pots: "urns",
    rim: "basin rim above running water",
    lines: "Lines",
  },
  blocks: {
    Bubblers: [{ ...elevation, beside: [planOfStones] }, ...bubblersBlocks],
    Stone: [cover],
    Wording: [bubblersSaid, lastStone],
    Drawings: [{ ...elevation, beside: [planOfStones] }],
    "Drawing points": bubblerPoints,
  },
  crewDrawings: [drawingsForCrew],
  proposalDrawings: [elevationForCustomer],
  below: { Stone: [rockTable] },
  formulas: [...bubblingFormulas, ...weirFormulas, ...stoneFormulas],
  adds: {
    given: "INDEX(bubblers.used,1)>0",
    "water out": "stones_water",
    "first fill": "urns_water",
    "wet area": ["wet_stone", "SUM(bubblers.urn_surface)"],
    "crate places": "SUM(bubblers.pier_places)",
    solid: "SUM(bubblers.pier_plan)",
    // no shorter than the splash lets it be
    "basin length": "basin_length-splash_spare",
    "basin kept": "splash_spare<=2[ft]",
  },
  cells: {
    lifting: heaviestBubbler,
    "price check": pricePerStone,
    "proposal said": { ...stonesInProposal, ...wordsOfStones },
  },
  heavy: { weight: "heaviest_bubbler", lighter: "a smaller stone in bubblers" },
  buys: {
    Bubblers: [
      ...rows.map((row) => ({
        what: `stone ${row}`,
        code: `INDEX(bubblers.code,${row})&""`,
        wanted: `INDEX(bubblers.used,${row})`,
        unit: "each" as const,
        named: "bubblers.name",
        sized: "bubblers_said.ordered",
      })),
      { what: "blocks of piers", code: "pier_block_code", wanted: "pier_blocks", unit: "each", waste: 0.05 },
    ],
    Stone: [
      {
        what: "cobble over the basin",
        code: "cover_code",
        wanted: "cover_tons",
        unit: "ton",
        byLoad: true,
        waste: 0.05,
      },
      {
        what: "stone around the crates",
        code: "fill_code",
        wanted: "fill_tons",
        unit: "ton",
        byLoad: true,
        waste: 0.05,
      },
    ],
  },
  items: [
    item("stone-drilled", "drilled stone", "each"),
    item("pot", "pot, urn or bowl", "each"),
    item("pier-block", "block of a pier", "each"),
    item("stone-cobble", "cobble", "ton"),
    item("stone-basin", "stone around the crates", "ton"),
  ],
  takeoff: [
    {
      what: "fittings of a stone's pipe, with sealant",
      code: "bubbler-fitting",
      wanted: "stones_counted",
      unit: "each",
    },
  ],
  hires: [
    stoneDelivered,
    hired("Core drill with bits", "drill_days", "core-drill-day", "Core drill with bits", "$/day"),
  ],
  tasks: [
    task(piers, "basin", "pier_blocks", production("pier-block-set", "Set a block of a pier", "each", 5), [
      "open_dig",
      "by_access",
    ]),
    // over the lines of pipe, once they have held water
    task(fill, "stones", "fill_tons", gravelRaked, ["by_access", "by_haul"]),
    task(drill, "stones", "drill_length", production("stone-drilled", "Core-drill stone, rig and water", "ft", 0.6)),
    task(
      set,
      "stones",
      "stones_counted",
      withMachine(
        production("bubbler-set", "Set a stone or urn, plumb it, fit its pipe", "each", 0.2),
        0.3,
        production("bubbler-set-hand", "Roll a stone or urn in place, plumb it, fit its pipe", "each", 0.1),
      ),
      ["by_access"],
    ),
    task(rake, "stone", "cover_tons", gravelRaked, ["by_access", "by_haul"]),
  ],
  crew: [
    ...bulletEachRow(
      "stop: lifting",
      bubblersTable,
      "STOP. {name} may tip: {tall|0|up} tall on a small foot. Do not set it before it is settled how it is pinned or footed.",
      { when: "NOT(stands_firm)" },
    ).map((said) => ({ ...said, says: said.says.replace("•  ", "") })),
    bullet(
      "caution: lifting",
      "Nobody between a stone and what it may lean against. It hangs until it stands plumb and does not rock; only then is its pipe fitted.",
      "stones_counted>0",
    ),
    ...under(
      piers,
      ...bulletEachRow(
        "step: basin",
        bubblersTable,
        "{name}: {piers_said}, middle {spot}; two layers of underlayment under each.",
        { when: "on_piers", beside: [bubblersSaid] },
      ),
      bullet(
        "step: basin",
        "Level and plumb, in bond; up to the rim or as high as the foot stands over it.",
        "pier_blocks>0",
      ),
    ),
    ...under(
      fill,
      bullet(
        "step: stones",
        "Once main and lines have held water: {fill_tons|1}, up to the rim, tamped. Stones without piers stand on it.",
        "fill_tons>0",
      ),
    ),
    ...under(
      drill,
      ...bulletEachRow(
        "step: stones",
        bubblersTable,
        "{name}: {hole} hole, {tall|0|up} long, from the top down; plumb as it will stand.",
        {
          when: "drill_length>0",
        },
      ),
      bullet(
        "step: stones",
        "Wet drilling: slurry off lawn and drains. Eyes, ears, lungs; ground-fault protection.",
        "drill_length>0",
      ),
    ),
    ...under(
      set,
      ...bulletEachRow(
        "step: stones",
        bubblersTable,
        "{row}, {name}: {size_crew}, {weight_said}; middle {spot}; {base_said}{pinned_said}.",
        { when: "used>0", beside: [bubblersSaid] },
      ),
      bullet(
        "step: stones",
        "Pipe up through the hole, its end below the opening; sealed at the foot so that none leaks down beside it.",
        "urns_counted<stones_counted",
      ),
      bullet(
        "step: stones",
        "The opening level to the eye of the water: it wells over all around.",
        "stones_counted>0",
      ),
    ),
    ...under(
      rake,
      bullet(
        "step: stone",
        "Cobble {cover_depth|0} deep over rim and edge of the liner, {cover_beyond|0} beyond it; by hand around the stones.",
        "cover_tons>0",
      ),
      bullet("step: stone", "The vault's lid stays free and marked.", "vaults_needed>0"),
    ),
    bullet(
      "caution: children",
      "Stones are climbed on: each stands firm before the fence is taken away.",
      "stones_counted>0",
    ),
  ],
  proposal: [
    ...bulletEachRow(
      "scope",
      bubblersTable,
      '{name}: {IF(is_urn,"an urn","a drilled stone")} {about}, with {does_said}.',
      { when: "used>0", beside: [bubblersSaid] },
    ),
    bullet("scope", "Cobble over the basin and its edge, about {cover_area|0}."),
    bullet(
      "scope",
      "The heaviest stone weighs about {heaviest_about|0}; stone is nature's, and its sizes vary.",
      "heaviest_stone>0",
    ),
    line(
      "note: children",
      "Stones invite climbing: please have children keep off them. A child can drown in ‹2 in|5 cm› of water.",
    ),
    line("note: children", "Public lines are marked before we dig (call 811); please show us your private ones."),
  ],
  handOver: [
    bullet(
      "cautions",
      'Keep the vault\'s lid fastened: a child can drown in ‹2 in|5 cm› of water.{IF(urns_counted>0," Urns hold water too.","")}',
    ),
    bullet("cautions", "Nobody climbs on the stones. One that rocks or leans: keep away, switch off, and call."),
    bullet("week", "Wind blows drops away: turn a stone's valve down where the ground beside the basin gets wet."),
    bullet("fall", "Before hard frost, empty the urns: ice splits them.", "urns_counted>0"),
    bullet(
      "fall",
      "Drain the drill holes with the pipes: water that freezes in them splits stone.",
      "urns_counted<stones_counted",
    ),
  ],
  told: ["bubblers.kind", "bubblers.tall", "bubblers.wide", "bubblers.deep", "bubblers.look"],
});
