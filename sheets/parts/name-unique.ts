import { check } from "../../engine/template/index.js";

/**
 * The check of a table's column `name` that no two rows in use share a name.
 *
 * @param table the table's name
 * @param inUse a condition on its whole columns, true in the rows in use: `falls.width>0`
 */
export const nameUnique = (table: string, inUse: string) =>
  check(
    `SUMPRODUCT((${table}.name=name)*(${inUse}))<2`,
    "{name} stands in more than one row: give each its own name, since the crew goes by it.",
    { label: "Name used twice" },
  );
