import {
  area,
  calc,
  check,
  count,
  decide,
  length,
  lines,
  office,
  percent,
  smallLength,
  yesno,
} from "../../../engine/template/index.js";
import { itemCode } from "../../vocabulary/item-code.js";
import { minus } from "../added.js";
import type { Whole } from "../brought.js";

const maker = "common size, no source: put in the maker's";

/** Storage crates in rows, columns and layers, with room for a pump vault among them. */
export const crates = ({ added }: Pick<Whole, "added">) =>
  lines("Storage crates and pump vault", {
    crate_code: itemCode("Item code, storage crate", { default: "crate" }),
    crate_length: office(smallLength, "Crate length", {
      default: 27,
      least: 6,
      most: 120,
      note: "These sizes must be those of the crate and vault bought: compare the descriptions of their items in the office book.",
      source: maker,
    }),
    crate_width: office(smallLength, "Crate width", {
      default: 16,
      least: 6,
      most: 120,
      source: maker,
    }),
    crate_height: office(smallLength, "Crate height", {
      default: 17,
      least: 3,
      most: 60,
      source: maker,
    }),
    crate_voids: office(percent, "Crate voids", {
      default: 0.95,
      least: 0.3,
      most: 0.99,
      source: maker,
    }),
    crate_gap: office(smallLength, "Stone around crates", {
      default: 4,
      least: 0,
      most: 48,
      source: "common practice, no source",
    }),
    crate_cover: office(smallLength, "Least stone over crates", {
      default: 6,
      least: 0,
      most: 36,
      source: "common practice, no source",
    }),
    vault_code: itemCode("Item code, pump vault", { default: "vault" }),
    vaults_needed: decide(count, "Pump vaults", { default: 1, least: 0, most: 4, whole: true }),
    vault_length: office(smallLength, "Vault length", {
      default: 27,
      least: 6,
      most: 120,
      source: maker,
    }),
    vault_width: office(smallLength, "Vault width", {
      default: 16,
      least: 6,
      most: 120,
      source: maker,
    }),
    vault_height: office(smallLength, "Vault height with lid", {
      default: 36,
      least: 6,
      most: 120,
      source: maker,
    }),
    extension_height: office(smallLength, "Extension ring height", {
      default: 6,
      least: 1,
      most: 60,
      source: maker,
    }),
    extension_code: itemCode("Item code, extension ring", { default: "vault-extension" }),
    extensions_needed: calc(
      count,
      "vaults_needed*WHOLE_UP(MAX(0,basin_depth-vault_height)/MAX(0.1[in],extension_height))",
      "Extension rings",
    ),
    room_long: calc(length, "MAX(0,basin_length-2*crate_gap)", "Room for crates, along", { working: true }),
    room_wide: calc(length, "MAX(0,basin_width-2*crate_gap)", "Room for crates, across", { working: true }),
    crates_turned: calc(
      yesno,
      "PLACES(room_long,crate_width)*PLACES(room_wide,crate_length)>PLACES(room_long,crate_length)*PLACES(room_wide,crate_width)",
      "Crates laid across",
      { working: true },
    ),
    crate_along: calc(smallLength, "IF(crates_turned,crate_width,crate_length)", "Crate size along basin", {
      working: true,
    }),
    crate_across: calc(smallLength, "IF(crates_turned,crate_length,crate_width)", "Crate size across basin", {
      working: true,
    }),
    crate_columns: calc(count, "PLACES(room_long,crate_along)", "Crate columns, along basin"),
    crate_rows: calc(count, "PLACES(room_wide,crate_across)", "Crate rows, across basin"),
    crate_layers: calc(count, "PLACES(MAX(0,basin_depth-crate_cover),crate_height)", "Crate layers"),
    vault_places: calc(
      count,
      "vaults_needed*PLACES_TAKEN(vault_length,vault_width,crate_along,crate_across)",
      "Crate places vaults take",
      { working: true },
    ),
    crates_a_layer: calc(
      count,
      `IF(crate_layers=0,0,MAX(0,crate_columns*crate_rows-vault_places${minus(added("crate places"))}))`,
      "Crates per layer",
    ),
    crates_needed: calc(count, "crates_a_layer*crate_layers", "Crates to lay", { strong: true }),
    crate_top: calc(length, "crate_layers*crate_height", "Height of crates"),
    stone_over_crates: calc(length, "MAX(0,basin_depth-crate_top)", "Stone over crates", { working: true }),
    crate_plan: calc(area, "crates_a_layer*crate_length*crate_width", "Crate plan area", { working: true }),
    vault_plan: calc(area, "MIN(basin_plan,vaults_needed*vault_length*vault_width)", "Vault plan area", {
      working: true,
    }),
    vault_fits: check(
      "IF(crate_layers=0,vaults_needed*vault_length*vault_width<basin_plan,vault_places<=crate_columns*crate_rows)",
      "The vaults take {vault_places} crate places, but a layer has {crate_columns} by {crate_rows}: enlarge the basin on sheet Decisions.",
      { label: "Vaults too large" },
    ),
    vault_planned: check(
      "vaults_needed>0",
      "No vault is planned: a pump under bare stone cannot be reached or kept clean. Enter pump vaults on sheet Decisions.",
      { label: "No pump vault", level: "look" },
    ),
    vault_in_depth: check(
      "OR(vaults_needed=0,ROUND(vault_height-basin_depth,9)<=0)",
      "The vault is {vault_height} high and the basin {basin_depth} deep, so it stands out of the ground. Raise the basin depth on sheet Decisions.",
      { label: "Vault taller than basin" },
    ),
    crates_fit: check(
      "crates_needed>0",
      "No crate fits: there is room for {crate_layers} layers of {crate_columns} by {crate_rows}, so water stands between stones only. Enlarge the basin on sheet Decisions.",
      { label: "No room for crates", level: "look" },
    ),
  });
