import { calc, count, length, lines } from "../../../engine/template/index.js";

/** Width over height of the plan's drawn area, which is to scale; that of the section, which is not, is the same. */
export const planRatio = 1.7;

/** Lines between crates that the plan shows either way; where there are more, each stands for several. */
export const planLines = 12;

/** Where things stand in the drawings of the basin: along it, across it, up from its bottom. */
export const drawingSizes = lines("Basin drawings, sizes", {
  drawn_columns: calc(count, "IF(crates_needed>0,crate_columns,0)", "Crate columns drawn"),
  drawn_rows: calc(count, "IF(crates_needed>0,crate_rows,0)", "Crate rows drawn"),
  columns_per_line: calc(count, `WHOLE_UP(MAX(1,drawn_columns)/${planLines})`, "Crate columns per line"),
  rows_per_line: calc(count, `WHOLE_UP(MAX(1,drawn_rows)/${planLines})`, "Crate rows per line"),
  crates_far: calc(length, "crate_gap+drawn_columns*crate_along", "Crates, far end"),
  crates_side: calc(length, "crate_gap+drawn_rows*crate_across", "Crates, far side"),
  far_gap: calc(length, "basin_length-MAX(crates_far,vault_far)", "Stone at the far end"),
  vault_near: calc(length, "MAX(crate_gap,crates_far-vault_length)", "Vault, near end"),
  vault_far: calc(length, "vault_near+IF(vaults_needed>0,vault_length,0[in])", "Vault, far end"),
  vault_middle: calc(length, "(vault_near+vault_far)/2", "Vault, middle"),
  vault_side: calc(length, "crate_gap+vaults_needed*vault_width", "Vaults, far side"),
  vault_half: calc(length, "(crate_gap+vault_side)/2", "Vaults, half across"),
  vault_top: calc(
    length,
    "IF(vaults_needed>0,vault_height+extensions_needed/MAX(1,vaults_needed)*extension_height,0[in])",
    "Vault top",
  ),
  section_near: calc(length, "-0.12*basin_length", "Section, near end"),
  // room for the names of the levels beside the far wall
  section_far: calc(length, "2.3*basin_length", "Section, far end"),
  section_top: calc(length, "1.1*(basin_depth+ground_over_rim)", "Section, top"),
  // room for the names of crates and vault beside the far wall
  plan_far: calc(length, `MAX(1.4*basin_length,${planRatio}*1.1*basin_width)`, "Plan, far end"),
  plan_side: calc(length, `plan_far/${planRatio}`, "Plan, far side"),
});
