import { sheet } from "../engine/template/index.js";
import { access } from "./ground/access.js";
import { groundBalance } from "./ground/balance.js";
import { bermLines, bermTable } from "./ground/berms.js";
import { groundCautions } from "./ground/cautions.js";
import { channelCuts, poolCuts } from "./ground/cuts.js";
import { digs } from "./ground/digs.js";
import { groundBuys } from "./ground/materials.js";
import { placeList, placesDug } from "./ground/places.js";
import { safeDig, slopeTable } from "./ground/safety.js";
import { soilLines, soilTable } from "./ground/soil.js";
import { treeLines, treeRules, treeTable } from "./ground/trees.js";
import { trenchLines, trenchTable, trenchWords } from "./ground/trenches.js";
import { wallLines, wallRules, wallTable } from "./ground/walls.js";

export const groundSheet = sheet(
  "Ground",
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
