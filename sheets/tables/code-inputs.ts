/** The inputs that hold item codes: the rows of the price book that they name go into the bid. */
export const codeInputs: readonly string[] = [
  "lines.item",
  "extra_lines.code",
  "options.code",
  "stones.code",
  "crate_code",
  "vault_code",
  "fill_valve_code",
  "fill_pipe_code",
  "liner_code",
  "underlayment_code",
  "seam_code",
  "bedding_code",
  "import_code",
  "wall_stone_code",
  "wall_block_code",
  "wall_base_code",
];
