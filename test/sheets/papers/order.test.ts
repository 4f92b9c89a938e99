import { describe, expect, test } from "vitest";
import { wholeOf } from "../../../sheets/parts/whole.js";
import { crewPage } from "../../../sheets/plan/crew-page.js";
import { pageOf } from "../../../sheets/plan/page-line.js";
import { crewStages } from "../../../sheets/plan/stages.js";
import { waterfallParts } from "../../../sheets/templates/waterfall.js";

/** What comes first, what comes later, and why. */
type Rule = readonly [string, string, string];

const tasks: readonly Rule[] = [
  ["Set out and protect the site", "Strip topsoil", "nothing is dug before lines are marked"],
  ["Strip topsoil", "Dig basin and stream", "topsoil is kept apart from what is dug below it"],
  ["Strip topsoil", "Build the berm", "a berm does not stand on topsoil"],
  ["Strip topsoil", "Dig footings of walls, lay their base", "a footing goes below topsoil"],
  ["Dig footings of walls, lay their base", "Build walls", "a wall stands on its base"],
  ["Build walls", "Build the berm", "a wall at a tree holds the berm, so it stands first"],
  ["Dig basin and stream", "Build the berm", "the berm is built of what is dug"],
  ["Build the berm", "Load soil out", "only what the berm leaves over is hauled"],
  ["Dig basin and stream", "Wheel dirt, soil and topsoil", "what is dug is wheeled away"],
  [
    "Wheel dirt, soil and topsoil",
    "Load soil out",
    "a truck is loaded with what was wheeled to it",
  ],
  ["Load soil out", "Place boulders", "trucks and stone want the same way in"],
  [
    "Dig basin and stream",
    "Set out falls, build their base",
    "a fall stands on ground that was cut",
  ],
  [
    "Set out falls, build their base",
    "Build back walls of the falls",
    "a wall stands on its footing",
  ],
  ["Build back walls of the falls", "Lay liner and underlayment", "the liner goes up over it"],
  ["Dig basin and stream", "Lay liner and underlayment", "liner is laid in the finished dig"],
  ["Build the berm", "Lay liner and underlayment", "the stream on a berm is lined on it"],
  ["Lay liner and underlayment", "Make seams", "seams join laid liner"],
  ["Lay liner and underlayment", "Set crates and vault", "crates stand on the liner"],
  ["Make seams", "Bring stone to the falls", "stone does not lie in the way of seams"],
  ["Bring stone to the falls", "Choose and set the lips", "lips are chosen from what lies there"],
  ["Make seams", "Choose and set the lips", "seams are tested before stone covers them"],
  ["Make seams", "Set pots on their base, fit and seal", "a pot stands on tested liner"],
  ["Set pots on their base, fit and seal", "Place boulders", "boulders close in around it"],
  ["Choose and set the lips", "Build the faces of the falls", "the face goes up to its lip"],
  ["Dig the pipe trench, hours with filling", "Lay the main", "the main lies in the trench"],
  [
    "Dig the pipe trench, hours with filling",
    "Spread bedding of basin and trenches",
    "bedding lies on the bottom of the trench",
  ],
  ["Dig basin and stream", "Set shoring and pull it again", "shoring holds what is dug"],
  [
    "Set shoring and pull it again",
    "Lay liner and underlayment",
    "nobody works in the dig before it is held",
  ],
  [
    "Dig narrow trenches, hours with filling",
    "Run conduit and wire to the pump",
    "the conduit lies in a narrow trench",
  ],
  [
    "Run conduit and wire to the pump",
    "Fit breaker and outlet, test the circuit",
    "the circuit is tested whole",
  ],
  [
    "Fit breaker and outlet, test the circuit",
    "First water, tune the valves",
    "a pump runs on a tested circuit only",
  ],
  ["Dig basin and stream", "Spread bedding of basin and trenches", "the basin has bedding too"],
  [
    "Spread bedding of basin and trenches",
    "Lay liner and underlayment",
    "liner lies on its bedding",
  ],
  ["Lay liner and underlayment", "Mix and lay mortar of the beds", "mortar lies on the liner"],
  [
    "Mix and lay mortar of the beds",
    "First water, tune the valves",
    "mortar sets before water runs over it",
  ],
  ["Set crates and vault", "Lay the main", "the main begins in the vault"],
  ["Lay the main", "Lay the lines", "lines leave the main"],
  ["Lay the main", "Fit the clarifier", "it stands in the main"],
  ["Fit the clarifier", "First water, tune the valves", "its loss is in the flows that are set"],
  ["Lay the lines", "Fit outlets and valves", "valves sit on the lines"],
  [
    "Lay liner and underlayment",
    "Fill around basin and pools, compact in lifts",
    "fill before liner would lie in the way of its edge",
  ],
  [
    "Lay the main",
    "Fill around basin and pools, compact in lifts",
    "fill would bury the main's way",
  ],
  ["Fit outlets and valves", "Choose and set the lips", "the outlet is built into the fall"],
  [
    "Fill around basin and pools, compact in lifts",
    "Place boulders",
    "stone at the rim stands on compacted fill",
  ],
  [
    "Dig narrow trenches, hours with filling",
    "Lay the fill line",
    "the fill line lies in a narrow trench",
  ],
  ["Dig basin and stream", "Set shoring and pull it again", "sides are held as the dig goes down"],
  ["Set shoring and pull it again", "Lay liner and underlayment", "nobody lines an unheld dig"],
  [
    "Dig narrow trenches, hours with filling",
    "Run conduit and wire to the pump",
    "the conduit lies in a narrow trench",
  ],
  [
    "Run conduit and wire to the pump",
    "Fit breaker and outlet, test the circuit",
    "a circuit is tested with its wire",
  ],
  [
    "Fit breaker and outlet, test the circuit",
    "First water, tune the valves",
    "the pump runs on a tested circuit",
  ],
  ["Lay the fill line", "First water, tune the valves", "the first fill comes by it"],
  ["Build the faces of the falls", "Place boulders", "lips and faces carry the stone beside them"],
  [
    "Place boulders",
    "Roll boulders into place by hand",
    "boulders are placed, those too heavy to carry last",
  ],
  [
    "Roll boulders into place by hand",
    "Lay cobble of banks and beds",
    "cobble fills in between boulders",
  ],
  [
    "Lay cobble of banks and beds",
    "Dump and rake gravel, fill the basin's stone",
    "gravel fills in between cobble",
  ],
  ["Place boulders", "Fit lights with their cable", "lights are set between stones"],
  ["Fit lights with their cable", "First water, tune the valves", "lights go under water"],
  ["Place boulders", "First water, tune the valves", "flows are set over the finished stone"],
  ["Place boulders", "Spread the topsoil kept", "machines do not cross spread topsoil"],
  ["Lay liner and underlayment", "Spread the topsoil kept", "topsoil covers the liner's edge"],
  ["Spread the topsoil kept", "Spread topsoil brought in", "what is there goes first"],
  ["Spread topsoil brought in", "Rake, seed and mulch lawn", "seed goes on topsoil"],
  ["Spread topsoil brought in", "Set plants", "plants stand in topsoil"],
  ["Set plants", "Spread bark mulch", "bark goes round the plants"],
  ["Rake, seed and mulch lawn", "Clean up and hand over", "nobody walks on seed"],
  ["Spread bark mulch", "Clean up and hand over", "bark is swept up"],
];

const whole = wholeOf(waterfallParts);
const taskNames = whole.tasks.map(({ task }) => task);
describe.each([["tasks, and with them the hours on Crew", tasks, taskNames]] as const)(
  "the order in which it is built: %s",
  (_, rules, names) => {
    test.each(rules)("%s, then %s: %s", (first, later) => {
      expect(names).toContain(first);
      expect(names).toContain(later);
      expect(names.indexOf(first)).toBeLessThan(names.indexOf(later));
    });

    test("each has its place by a rule, and stands once", () => {
      const ruled = new Set(rules.flat());
      expect(names.filter((name) => !ruled.has(name))).toEqual([]);
      expect(new Set(names).size).toBe(names.length);
    });
  },
);

test("on Crew, dangers and cautions come before the first step, and a test run before the banks are set", () => {
  const sections = whole.crew.map(({ section }) => section);
  const warned = sections.map((one, i) => (/^(stop|caution): /.test(one) ? i : -1));
  expect(Math.max(...warned)).toBeLessThan(sections.indexOf("before"));
  expect(sections.filter((one) => one === "caution: lifting").length).toBeGreaterThan(0);
  const run = sections.indexOf("step: test run");
  expect(run).toBeGreaterThan(sections.indexOf("do: circuit"));
  expect(run).toBeLessThan(sections.indexOf("do: stone"));
});

test("on Crew, stone holds the crates before the basin is filled, and the cable lies before stone covers it", () => {
  const at = (words: RegExp) => whole.crew.findIndex(({ says }) => words.test(says));
  const [crates, run, cable, boulders] = [
    at(/^~☐ Fill stone around the crates/),
    at(/basin full/),
    at(/the lights' cable/),
    whole.crew.findIndex(({ task }) => task === "Place boulders"),
  ];
  expect(crates).toBeGreaterThan(whole.crew.findIndex(({ task }) => task === "Lay the lines"));
  expect(run).toBeGreaterThan(crates);
  expect(cable).toBeGreaterThan(run);
  expect(boulders).toBeGreaterThan(cable);
});

test("on Crew, what a task needs to know stands under its own box", () => {
  const boxes = whole.crew.map(({ task }) => task);
  for (const [at, { under }] of whole.crew.entries()) {
    if (under === undefined) continue;
    const box = boxes.slice(0, at).findLast((one) => one !== undefined);
    expect(box).toBe(under);
  }
  expect(whole.crew.filter(({ under }) => under !== undefined).length).toBeGreaterThan(40);
});

test("a line under a task that has no box is refused, with the name of that task", () => {
  const lost = { section: "step: dig", says: "~x", under: "Dig the moat" } as const;
  expect(() => pageOf(crewPage, [lost])).toThrow('stands under the task "Dig the moat"');
});

test("on Crew, what belongs to a stage of the work stands behind its tasks", () => {
  const order = whole.crew.map(({ section }) => section);
  const staged = crewStages.flatMap((stage) => [`do: ${stage}`, `step: ${stage}`]);
  const found = [...new Set(order.filter((section) => /^(do|step): /.test(section)))];
  expect(found).toEqual(staged.filter((section) => found.includes(section)));
  // a stage whose details nobody sees does not stand there for nothing
  expect(found.filter((section) => section.startsWith("step: ")).length).toBeGreaterThan(12);
});
