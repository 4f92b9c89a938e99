import { describe, expect, test } from "vitest";
import { yard } from "./small-yard.js";

/**
 * The small yard worked through on paper, from the walk to the price. What water does (the throw of a fall, the layout
 * of crates) is worked by hand elsewhere and taken here.
 */
const job = yard();
const to = (id: string, value: number, decimals = 2) =>
  expect(job.figure(id), id).toBeCloseTo(value, decimals);

test("the way in: three steps, so by hand, whatever the gate", () => {
  expect(job.value("work_method")).toBe("by hand");
  expect(job.value("soil_grade")).toBe("hard"); // clay
  to("soil_factor", 1.45);
  // 4% of slope: 0.4 x 25%; three steps: 3 x 5%
  to("barrow_factor", 1.25);
  // 80 ft at 30% for each 100 ft: 1.25 x 1.24
  to("haul_factor", 1.55);
  // three people: NIOSH 51 x 10/15 x (1 - 0.0075 x 15) x (0.82 + 1.8/20) x 0.9 = 24.71 lb each
  to("hand_lift", 74.14);
  to("hand_moved", 600); // 200 lb each on rollers
  to("heaviest_stone", 216.56); // 1.5 x 1.25 x 1 ft x 0.7 x 165
});

test("ground, in place", () => {
  // basin 11 x 9, runs 6 x (4.83 + 4) and 8 x (5.33 + 4): 226.67 ft², 4 in deep
  to("strip_volume", 2.8);
  // basin 7 x 5 x 3 ft 2 in: 4.105; half of the channel: 12.19 and 18.42 ft³: 1.133; less topsoil 0.846
  to("dig_volume", 4.39);
  // strip there and back, dig out: 2 x 2.80 + 4.39
  to("dirt_wheeled", 9.99);
  to("trench_volume", 4); // 54 ft x 1 x 2
  // (4.39 + 0.34) x 1.43 loose: under 10 yd³ and, at 100 lb/ft³, under 12 tons
  to("haul_loads", 1);
});

describe("stone, at 165 lb/ft³", () => {
  test.each([
    // 4.5 ft x 2 x 0.33 x 0.95
    ["lips", 0.233],
    // 2 x 1.5 + 1.5 + 1: 5.5 ft² x 1.5 x 0.7
    ["fall faces", 0.476],
    // 5.5 ft² x 0.75 x 0.7
    ["back walls of falls", 0.238],
    // both sides of 1.5 and 1 ft: 5 ft x 1.5 x 1.5 x 0.65; the pot needs none
    ["flashing stones at the lips", 0.603],
    // both banks of 14 ft: 28 x 1.5 x 1.5 x 0.3 x 0.65
    ["boulders along the banks", 1.014],
    // 28 ft x 0.75 x 1.414: 29.7 ft² x 0.5 x 0.7 x 0.6
    ["cobble on the banks", 0.515],
    // 8 x 2.5 ft, 4 in, 62% solid
    ["gravel in the bed", 0.341],
    // 6 x 2 ft, 4 in, 60% solid
    ["cobble in the bed", 0.198],
    // (35 - 3) x 3 - 15 x 1.417: 74.75 ft³ x 0.6
    ["stone around and over the crates", 3.7],
  ])("%s", (place, tons) => {
    expect(job.at("stone_places", "name", place, "tons")).toBeCloseTo(tons, 3);
  });

  test("in all, and for each foot of stream against a band of 0.1 to 1.0 ton", () => {
    to("stone_tons", 7.318, 3);
    to("stone_per_foot", (7.318 - 3.7) / 14);
    expect(job.value("stone_in_band")).toBe(true);
  });
});

describe("man-hours", () => {
  const hours: [string, number][] = [
    ["Set out and protect the site", 8.33], // 1 / 0.12
    ["Strip topsoil", 3.11], // 2.80 / 0.9
    ["Dig basin and stream", 10.98], // 4.39 / 0.58 x 1.45
    ["Set out falls, build their base", 8], // 2 / 0.25: the split shares one, the pot has none
    ["Build back walls of the falls", 2.5], // 5.5 / 2.2
    ["Wheel dirt, soil and topsoil", 10.32], // 9.99 / 1.5 x 1.55
    ["Load soil out", 7.69], // 1 / 0.13
    ["Dig the pipe trench, hours with filling", 16.57], // 4 / 0.35 x 1.45
    ["Spread bedding of basin and trenches", 1.14], // 0.883 / 1.2 x 1.55
    ["Lay liner and underlayment", 6.18], // 340 / 55
    ["Set crates and vault", 2], // 6 / 3
    ["Lay the main", 0.91], // 20 / 22
    ["Lay the lines", 1.55], // 34 / 22
    ["Fit outlets and valves", 3.33], // 2 / 0.6
    ["Bring stone to the falls", 2.45], // 0.947 / 0.6 x 1.55
    ["Choose and set the lips", 7.5], // 4.5 / 0.6
    ["Build the faces of the falls", 6.88], // 5.5 / 0.8
    ["Set pots on their base, fit and seal", 5], // 1 / 0.2
    ["Roll boulders into place by hand", 20.88], // 1.617 / 0.12 x 1.55: 217 lb is more than 74
    ["Lay cobble of banks and beds", 3.16], // 0.713 / 0.35 x 1.55
    ["Dump and rake gravel, fill the basin's stone", 6.96], // 4.041 / 0.9 x 1.55
    ["First water, tune the valves", 6.67], // 1 / 0.15
    ["Spread the topsoil kept", 1.87], // 2.80 / 1.5
    ["Clean up and hand over", 10], // 1 / 0.1
  ];

  test.each(hours)("%s", (task, expected) => {
    expect(job.at("tasks", "task", task, "hours")).toBeCloseTo(expected, 2);
  });

  test("no other task has hours, and no machine runs", () => {
    const all = job.column("tasks.hours").filter((one) => Number(one) > 0);
    expect(all).toHaveLength(hours.length);
    to("machine_hours", 0);
  });

  test("days: 154 h of tasks and 3 inspections of half an hour, over 3 people of 7 h", () => {
    // 38.5 h with a dig open are 2 days, and 1.385 looks a day where May rains 10 of 31 days
    to("inspections_needed", 3);
    to("task_hours", 155.47);
    to("work_days", 8); // 7.40
    to("daily_hours", 24); // 8 days x 3 people x an hour
    // half of 10 in 31 days are lost: 8 dry days come with 2 lost in 79%, with 3 in 91%
    to("days_lost", 3);
  });
});

test("liner: 12 ft of the 15 ft roll for the basin, 8 ft of the 20 ft roll for the stream; none for the pot", () => {
  // one sheet down bed and falls: edge 0.5, runs 14, drops 1.5 and 1, lap 1: 18 ft across the roll of 20 ft
  to("stream_sheet_length", 18);
  // as wide as the lower run: 2.5 + 8 in + 2 x 13 in x 1.414 + 1, 7.23 ft, so 8 ft are bought
  to("stream_sheet_width", 7.23);
  to("liner_area_bought", 12 * 15 + 8 * 20);
  // lapped at each fall it would be 25 ft of the 10 ft roll: 6.73 and 7.23 of the runs, 4.02 and twice 3.39 of the falls
  to("liner_plans.taken[1]", 12 * 15 + 247.7, 0);
});

test("cost to price, from the demo's invented prices", () => {
  // pot 340, crates 310, vault 385, sand 38, liner 380.80, underlayment 79.20, stone 1,050 (lips 155, boulders 330,
  // fall stones 165, cobble 118, gravel 26, basin stone 256), foam 35, pot fitting 36, pipe and fittings 382.50,
  // primer 12.50, unions and clamps 38, valve box 42, drain valve 24, a roll of fabric 42 for 39 ft² around the crates
  to("materials_before_tax", 3195);
  // 7% of each line, and of the pump at 389
  to("material_cost", 3195 + 223.65 + 389 + 27.23);
  // (34 + 2 x 22) / 3 = 26 with 42.05% of burden; 8 days x 3 people x 8 h
  to("labor_cost", 192 * 36.933);
  // soil away 165 and its dump fee 60, a load of stone 135, 11 days on site at 88, a toilet 140; no machine, no mats
  to("equipment_cost", 165 + 60 + 135 + 968 + 140);
  to("direct_cost", 3834.88 + 7091.14 + 1468);
  to("overhead_cost", 1735.16); // 14%
  to("contingency_cost", 371.82); // 3%
  to("total_cost", 14501);
  to("price", 18150); // 14,501.00 / 0.8 = 18,126.25, up to the next 50
  to("price_per_foot", 18150 / 14);
});
