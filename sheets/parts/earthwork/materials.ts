import { buysTable } from "../materials/buys.js";

export const groundBuys = buysTable("ground_buys", [
  {
    // its price holds the delivery
    what: "soil brought in, loose",
    code: "import_code",
    wanted: "import_volume",
    unit: "yd3",
  },
  {
    what: "wall stone",
    code: "wall_stone_code",
    wanted: "wall_stone",
    unit: "ton",
    byLoad: true,
  },
  {
    what: "bedding of the trenches",
    code: "bedding_code",
    wanted: "trench_bedding",
    unit: "yd3",
    byLoad: true,
  },
  { what: "wall blocks", code: "wall_block_code", wanted: "wall_blocks", unit: "each" },
  {
    what: "base gravel",
    code: "wall_base_code",
    wanted: "wall_base",
    unit: "yd3",
    byLoad: true,
  },
]);
