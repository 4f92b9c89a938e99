import { sheet } from "../../../engine/template/index.js";
import { access } from "../access/access.js";
import { bermLines, bermTable } from "../berms/berms.js";
import { placeList, placesDug } from "../digging-safety/places.js";
import { safeDig, slopeTable } from "../digging-safety/safety.js";
import { channelCuts, poolCuts } from "../stream-dig/cuts.js";
import { treeLines, treeRules, treeTable } from "../trees/trees.js";
import { trenchLines, trenchTable, trenchWords } from "../trench/trenches.js";
import { wallLines, wallRules, wallTable } from "../walls/walls.js";
import { groundBalance } from "./balance.js";
import { groundCautions } from "./cautions.js";
import { digs } from "./digs.js";
import { groundBuys } from "./materials.js";
import { soilLines, soilTable } from "./soil.js";

export const groundSheet = sheet(
  "Earthwork",
  "Strip, dig, trench, berm, haul; trees and walls; and whether the dig is safe to stand in.",
  [
    groundBalance,
    soilLines,
    digs,
    trenchLines,
    trenchTable,
    channelCuts,
    poolCuts,
    bermTable,
    bermLines,
    trenchWords,
    safeDig,
    placesDug,
    treeRules,
    treeTable,
    treeLines,
    wallRules,
    wallTable,
    wallLines,
    access,
    groundBuys,
    groundCautions,
    soilTable,
    slopeTable,
    placeList,
  ],
);
