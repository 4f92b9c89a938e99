import { expect, test } from "vitest";
import { moneyJob, smallJob } from "../sheets/money/money-job.js";

// NEC Chapter 9, Table 8, stranded uncoated copper, ohms for each 1,000 ft at 75 °C (from memory)
test.each([
  ["12 AWG", 1.98],
  ["10 AWG", 1.24],
  ["8 AWG", 0.778],
  ["6 AWG", 0.491],
])("the drop in %s is that of its resistance, out and back", (wire_size, resistance) => {
  const given = { pump_nameplate: 10, panel_distance: 100, wire_ends: 0, wire_size };
  const job = moneyJob({ ...smallJob, ...given });
  const ratio = job.figure("circuit_drop") / ((2 * 10 * 100 * resistance) / 1000);
  expect(ratio).toBeGreaterThan(0.99);
  expect(ratio).toBeLessThan(1.01);
});
