import { bullet, bulletEachRow, eachRow, line } from "../../plan/page-line.js";
import { beds } from "../../tables/beds.js";
import { channelFormulas } from "../../vocabulary/channel.js";
import { part } from "../part.js";
import { poolsTable } from "./pools-table.js";
import { streamBlocks } from "./stream.js";

const hasPools = "SUM(pools.length_counted)>0";

export const stream = part("Stream", "The runs and pools between the falls, and the water in them.", {
  blocks: { Stream: streamBlocks },
  below: { "Water tables": [beds] },
  formulas: channelFormulas,
  crew: [
    ...eachRow(
      "stop: water",
      poolsTable,
      "STOP. {name}: water {water_depth|up} deep. Do not fill it before the barrier that the authority wants is agreed.",
      { when: "NOT(fenced)" },
    ),
    ...bulletEachRow(
      "step: set out",
      poolsTable,
      "{name}: {length_counted} by {width_counted}, {depth_counted|up} deep from the lip of level {before_level|0} to the finished bed; running, the water stands {water_depth|up} deep.",
    ),
    bullet("caution: children", "{child_caution}", "LEN(child_caution)>0"),
  ],
  handOver: [
    bullet(
      "cautions",
      "A child can drown in ‹2 in|5 cm› of water: never leave small children alone near it. Keep the vault's lid fastened.",
    ),
  ],
  proposal: [
    bullet("scope", "A stream {runs_length} long.", "SUM(runs.length_counted)>0"),
    ...bulletEachRow(
      "scope",
      poolsTable,
      "{name}: a pool about {length_counted} by {width_counted}, water up to {water_depth|up} deep.",
    ),
    line("note: children", "{child_caution}", "LEN(child_caution)>0"),
    line(
      "note: children",
      `Even shallow water{IF(${hasPools},", such as that of the pool,","")} is a danger to small children: watch them near it. Local rules may ask for a barrier. Public lines are marked before we dig (call 811); please show us your private ones.`,
    ),
  ],
  told: ["runs.length", "runs.width", "pools.length", "pools.width"].flatMap((name) => [name, `${name}_plus`]),
});
