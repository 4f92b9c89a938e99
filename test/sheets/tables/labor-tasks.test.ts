import { expect, test } from "vitest";
import { laborTasks } from "../../../sheets/tables/labor-tasks.js";
import { usedRates } from "../../../sheets/tables/used-rates.js";

test("each task counts in the unit of its rate", () => {
  const units = new Map(usedRates.map(({ code, unit }) => [code, unit]));
  const wrong = laborTasks.filter(({ rate_code, unit }) => units.get(rate_code) !== `${unit}/hour`);
  expect(wrong).toEqual([]);
});
