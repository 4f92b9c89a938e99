import { unprinted } from "../../../engine/template/index.js";
import { bullet, bulletEachRow, eachRow, under } from "../../plan/page-line.js";
import { item } from "../goods.js";
import { part } from "../part.js";
import { production, withMachine } from "../rates.js";
import { task } from "../task.js";
import { wallPlaces } from "./places.js";
import { wallLines, wallRules, wallTable } from "./walls.js";

export const walls = part("Walls", "Dry-laid walls: base, stone, face, and when an engineer is needed.", {
  blocks: { Earthwork: [unprinted(wallRules), wallTable, wallLines] },
  digs: wallPlaces,
  buys: {
    Earthwork: [
      {
        what: "wall stone",
        code: "wall_stone_code",
        wanted: "wall_stone",
        unit: "ton",
        byLoad: true,
        waste: 0.05,
      },
      {
        what: "wall blocks",
        code: "wall_block_code",
        wanted: "wall_blocks",
        unit: "each",
        waste: 0.05,
      },
      {
        what: "base gravel",
        code: "wall_base_code",
        wanted: "wall_base",
        unit: "yd³",
        byLoad: true,
        waste: 0.05,
      },
    ],
  },
  items: [
    item("stone-wall", "wall stone", "ton"),
    item("wall-block", "wall block", "each"),
    item("gravel-base", "base gravel", "yd³"),
  ],
  tasks: [
    task(
      "Dig footings of walls, lay their base",
      "walls",
      "wall_base",
      withMachine(
        production("wall-base", "Dig a wall's footing, lay and compact its base", "yd³", 0.5),
        0.4,
        production("wall-base-hand", "Dig a wall's footing, lay its base, by hand", "yd³", 0.3),
      ),
      ["open_dig", "by_access", "by_haul", "by_soil"],
    ),
    task(
      "Build walls",
      "walls",
      "wall_face",
      withMachine(
        production("wall-built", "Build dry-laid wall", "ft²", 2.8),
        0.1,
        production("wall-built-hand", "Build dry-laid wall, stone carried", "ft²", 2),
      ),
      ["by_access", "by_haul"],
    ),
  ],
  crew: [
    ...eachRow(
      "stop: walls",
      wallTable,
      "STOP. {name}: {code_height|up} from foot to top, or with a load behind it, needs a permit and an engineer. Do not build before both are here.",
      { when: "NOT(permitted)" },
    ),
    ...under(
      "Dig footings of walls, lay their base",
      bullet(
        "step: walls",
        "Gravel base {wall_base_depth|0|up} deep, {wall_base_margin|0|up} wider than the wall on each side. Leave the water behind a wall a way out.",
        "wall_face>0",
      ),
    ),
    ...bulletEachRow("step: walls", wallLines, "{said}.", { when: "LEN(said)>0" }),
  ],
  proposal: [bullet("scope", "Walls, about {wall_seen|0} of wall face above ground.", "wall_seen>0")],
  told: ["walls.length", "walls.height"],
});
