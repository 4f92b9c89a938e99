import { expect, test } from "vitest";
import { moneyJob, smallJob } from "./money-job.js";

/** One small job worked out by hand, from what is needed to what is asked for it. */
const job = moneyJob(smallJob, undefined, true);
const to = (id: string, value: number, decimals = 9) =>
  expect(job.figure(id), id).toBeCloseTo(value, decimals);

test("every check is right", () => {
  expect(job.failed()).toEqual([]);
});

test("hours: quantity over what one person does in an hour", () => {
  const hours = [
    1 / 0.25, // set out
    16 / 2, // dig 16 yd³ at 2 an hour
    400 / 50, // lay 400 ft² of liner at 50
    30 / 20, // lay 30 ft of main at 20
    10 / 20, // and 10 ft of branch
    1 / 0.5, // fit an outlet
    1 / 0.2 + 3 / 0.6, // found a fall and set its lip of 3 ft
    6 / 0.5, // place 6 tons of boulders
    1 / 0.25, // start up
    1 / 0.125, // clean up
    30 / 30 + 1 / 0.5, // run 30 ft of conduit, fit breaker and outlet
    // digging and lining, 16 h over 2 people, are a day with the dig open; with 3 days of 10 lost
    // to rain, 1.43 days: two looks of half an hour
    2 * 0.5,
  ];
  expect(hours.reduce((a, b) => a + b)).toBe(62);
  to("man_hours", 62);
  to("inspections_needed", 2);
  // half of the dig, a tenth of the liner, a fifth of the fall's set-up and lip and of cleaning up, 40 % of the stone
  to("machine_hours", 4 + 0.8 + 2 + 1.6 + 4.8);
  to("machine_days", 2); // 13.2 h over 8 h is 1.65
  to("work_days", 4); // 62 h over 2 people of 8 h is 3.875
  to("paid_man_hours", 4 * 2 * 8); // whole days
});

test("wages: 42.15 % of burden, and the operator's hours at the operator's rate", () => {
  to("burden", 0.4215);
  to("crew_rate", ((30 + 20) / 2) * 1.4215);
  to("own_electrician_rate", 40 * 1.4215);
  // 13.2 h at $39.802, 3 h at $56.86 and 47.8 h at $35.5375: $525.3864, $170.58, $1,698.6925
  to("labor_cost", 2394.66);
});

test("rain: nine days in thirty, and four good days wanted with 80 %", () => {
  to("day_lost", 0.3);
  // four good days come with at most 2 lost in 74.4 % of cases, with at most 3 in 87.4 %
  to("days_lost", 3);
  to("days_allowed", 7);
  to("rain_mean", (4 * 0.3) / 0.7);
  // 2 of 4 days are the machine's, so are 1.5 of the 3 lost: 2 whole days more on hire
  to("machine_hire_days", 4);
  to("compactor_days", 0);
});

test.each([
  // code, needed, bought, cost, 8 % tax
  ["liner-45mil", 400, 400, 440, 35.2],
  ["stone-lip", 6, 7, 2100, 0], // 6.3 tons with waste, by the ton, free of tax
  ["pipe-2", 40, 60, 120, 9.6], // 43.2 ft with waste, in lengths of 20
  ["elbow-90-2", 2, 2, 6, 0.48],
  ["ball-valve-2", 1, 1, 25, 2],
  ["bulkhead-2", 1, 1, 30, 2.4],
  ["flex-pipe-2", 6, 10, 40, 3.2], // sold by 5 ft
  // two joints each for 2 elbows, valve, bulkhead, flexible pipe; two lengths of 20 ft: 12
  ["adhesive", 12 / 25, 1, 12, 0.96],
  ["primer", 12 / 50, 1, 8, 0.64],
  ["foam", 3 / 4, 1, 17, 1.36],
  ["gfci-outlet", 1, 1, 70, 5.6],
  ["breaker", 1, 1, 15, 1.2],
  ["conduit", 30, 40, 60, 4.8], // 33 ft with waste, in lengths of 10
  ["wire-12", 108, 114, 57, 4.56], // three conductors of 30 ft and 6 ft at the ends, 113.4 with waste
])("bought: %s", (code, needed, bought, cost, tax) => {
  expect(job.ofLine(code, "needed")).toBeCloseTo(needed, 9);
  expect(job.ofLine(code, "order_quantity")).toBeCloseTo(bought, 9);
  expect(job.ofLine(code, "cost")).toBeCloseTo(cost, 9);
  expect(job.ofLine(code, "tax")).toBeCloseTo(tax, 9);
});

test("from cost to price", () => {
  to("materials_before_tax", 3000);
  to("materials_tax", 72);
  to("material_cost", 3000 + 72 + 900 * 1.08); // with the pump at $900
  // machine, its way, a load of stone, 7 days, the permit of the circuit
  to("equipment_cost", 4 * 300 + 200 + 120 + 7 * 50 + 80);
  to("subcontract_cost", 500);
  to("direct_cost", 4044 + 2394.66 + 1950 + 500);
  to("overhead_cost", 888.87); // 10 % of $8,888.66
  // three points 0, 300, 1,200: mean 400, deviation 200; 80 % lies 0.8416 deviations above the mean
  to("risk_allowance", 568.32);
  to("contingency_cost", 177.77 + 568.32); // 2 % of direct cost and the allowance
  to("total_cost", 10523.62);
  to("price_exact", 10523.62 / 0.8);
  to("price", 13175); // up from $13,154.53 to a multiple of $25
  to("profit", 2651.38);
  to("margin", 2651.38 / 13175);
  to("markup", 2651.38 / 10523.62);
});

test("what it comes to", () => {
  to("cost_per_foot", 10523.62 / 20);
  to("price_per_foot", 13175 / 20);
  to("break_even_price", 8888.66 + 888.87);
  // $3,397.47 are left for what goes wrong; an hour paid costs $37.417 and its overhead
  to("cushion_man_hours", 3397.47 / ((2394.66 / 64) * 1.1));
  expect(job.column("draws.amount").slice(0, 4)).toEqual([3952.5, 5270, 2635, 1317.5]);
});

test("hours alone are paid, and the machine goes home in the rain, where the office says so", () => {
  const own = moneyJob({ ...smallJob, pay_whole_days: false, hire_in_rain: false });
  expect(own.figure("paid_man_hours")).toBe(62);
  // 13.2 h at $39.802, 3 h at $56.86 and 45.8 h at $35.5375
  expect(own.figure("labor_cost")).toBeCloseTo(2323.58, 9);
  expect(own.figure("machine_hire_days")).toBe(2);
});

test("each day has its set-up and its way, and a long day its premium", () => {
  // of 10 h a day 1.5 h go to set-up and travel: 62 h of tasks over 2 people of 8.5 h are 3.65 days
  const long = moneyJob({ ...smallJob, shift_hours: 10, daily_set_up: 0.5, travel_time: 1 });
  expect(long.figure("hours_at_tasks")).toBe(8.5);
  expect(long.figure("work_days")).toBe(4);
  expect(long.figure("daily_hours")).toBeCloseTo(4 * 2 * 1.5, 9);
  expect(long.figure("man_hours")).toBeCloseTo(62 + 12, 9);
  // 2 of 10 h a day are over 8, and 10 of 50 h a week over 40: a fifth of 80 h paid, at half a rate more
  expect(long.figure("overtime_share")).toBeCloseTo(0.2, 9);
  expect(long.figure("overtime_cost")).toBeCloseTo(80 * 0.2 * 0.5 * 35.5375, 9);
  // 13.2 h at $39.802, 3 h at $56.86 and 63.8 h at $35.5375: $2,963.2589, and $284.30 of premium
  expect(long.figure("labor_cost")).toBeCloseTo(2963.26 + 284.3, 9);
  const six = moneyJob({ ...smallJob, work_week: 6 });
  expect(six.figure("overtime_share")).toBeCloseTo(8 / 48, 9);
});

test("where the machine takes longer than the crew's hours shared out, it sets the days", () => {
  const many = moneyJob({ ...smallJob, crew_size: 12 });
  // 62 h over 12 people are a day, but the machine runs 13.2 h
  expect(many.figure("work_days")).toBe(2);
  expect(many.value("one_machine")).toBe(false);
});

test.each(["berm_volume", "basin_backfill", "wall_base"])("%s is compacted", (name) => {
  // at least a day; with the hours of a berm or base at 1 yd³ an hour, still no fourth machine day
  expect(moneyJob({ ...smallJob, [name]: 1 }).figure("compactor_days")).toBe(1);
});

test("the compactor stays as long as the crew fills and compacts", () => {
  // 96 yd³ dug: 48 h, half in the machine, and 9.2 h of other tasks: 33.2 h are 5 days
  const long = moneyJob({ ...smallJob, dig_volume: 96, berm_volume: 17 });
  expect(long.figure("machine_days")).toBe(6); // with half of the 17 h of the berm 41.7 h
  expect(long.figure("compactor_days")).toBe(2); // 17 h at 1 yd³ an hour, over 2 people of 8 h
});

test("loads are of what is bought, waste and packs included, each line alone", () => {
  const lines = (tons: number, more = {}) =>
    moneyJob({ ...smallJob, stones: [{ name: "lip stones", code: "stone-lip", tons }], ...more });
  expect(lines(14).figure("bulk_lines.loads[1]")).toBe(1); // 14.7, by the ton 15
  expect(lines(14.9).figure("bulk_lines.loads[1]")).toBe(2); // 15.645, by the ton 16
  const gravel = { description: "gravel", code: "stone-lip", unit: "yd³", needed: 12 };
  const by = (by_load: boolean) => lines(14, { additional_items: [{ ...gravel, by_load }] });
  // 15 tons at 100 lb/ft³ are 11.1 yd³, but the bed holds 10
  expect(by(true).figure("additional_items.loads[1]")).toBe(2);
  expect(by(false).figure("additional_items.loads[1]")).toBe(0);
});
