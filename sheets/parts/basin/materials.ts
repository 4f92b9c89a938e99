import { buysTable } from "../materials/buys.js";

export const basinMaterials = buysTable("basin_buys", [
  { what: "storage crates", code: "crate_code", wanted: "crates_needed", unit: "each" },
  { what: "pump vaults", code: "vault_code", wanted: "vaults_needed", unit: "each" },
  {
    what: "vault extensions",
    code: "extension_code",
    wanted: "extensions_needed",
    unit: "each",
  },
  {
    what: "fill valve",
    code: "fill_valve_code",
    wanted: "IF(fill_line_length > 0, 1, 0)",
    unit: "each",
  },
  { what: "fill pipe", code: "fill_pipe_code", wanted: "fill_line_length", unit: "ft" },
  {
    what: "bedding",
    code: "bedding_code",
    wanted: "bedding_volume",
    unit: "yd3",
    byLoad: true,
  },
]);
