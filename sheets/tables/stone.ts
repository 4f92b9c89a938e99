/** How stone is placed; the first two go with their fall, whose hours go by its lip and its face. */
export const stoneWork = {
  lips: "set as lips",
  faces: "built into the fall",
  placed: "placed one by one",
  laid: "barrowed and laid",
  raked: "dumped and raked",
} as const;

const { lips, faces, placed, laid, raked } = stoneWork;

/** Kinds of stone to start from, with the largest of each, in feet. Sizes: common practice, no source. */
export const stoneKinds = [
  kind("lip stones", "stone-lip", [3, 2, 0.5], 0.9),
  kind("boulders", "stone-boulder", [2.5, 2, 1.5]),
  kind("fall stones", "stone-boulder", [2.5, 1.5, 1]),
  kind("bed boulders", "stone-boulder", [1.5, 1, 1]),
  kind("cobble", "stone-cobble", [0.7, 0.5, 0.4]),
  kind("gravel", "gravel-washed", [0.1, 0.1, 0.1]),
  kind("basin stone", "stone-basin", [0.2, 0.2, 0.2]),
];

function kind(name: string, code: string, sizes: readonly [number, number, number], fullness = 0.7) {
  const [stone_length, stone_width, stone_height] = sizes;
  return { name, code, rock: "field stone", stone_length, stone_width, stone_height, fullness };
}

type Course = readonly [width: number, thickness: number, voids: number];

/** Where stone goes to start from. Courses in feet, voids, shares: common practice, no source. */
export const stonePlaces = [
  place("lips", "lips", "lip stones", lips, [2, 0.33, 0.05]),
  place("fall faces", "fall faces", "fall stones", faces, [0, 1.5, 0.3]),
  place("back walls of falls", "back walls", "fall stones", faces, [0, 0.75, 0.3]),
  place("flashing stones at the lips", "fall shoulders", "boulders", placed, [1.5, 1.5, 0.35]),
  place("boulders along the banks", "bank edges", "boulders", placed, [1.5, 1.5, 0.35], 0.3),
  place("cobble on the banks", "bank faces", "cobble", laid, [0, 0.5, 0.4], 0.7),
  place("boulders around pools", "pool edges", "boulders", placed, [1.5, 1.25, 0.35], 0.5),
  place("boulders at the toe of berms", "berm toes", "boulders", placed, [1.5, 1.25, 0.35], 0.3),
  bed("gravel in the bed", "gravel", "gravel", raked),
  bed("cobble in the bed", "cobble", "cobble", laid),
  bed("cobble between boulders in the bed", "cobble and boulders", "cobble", laid, 0.6),
  bed("boulders in the bed", "cobble and boulders", "bed boulders", placed, 0.4),
  bed("laid stone in the bed", "laid stone, dry", "cobble", laid),
  bed("stone set in the bed's mortar", "stone set in mortar", "cobble", laid, 1, 0.35),
  place("stone around and over the crates", "basin fill", "basin stone", raked, [0, 0, 0.4]),
];

function place(name: string, covers: string, stone: string, work: string, course: Course, share = 1) {
  const [width, thickness, voids] = course;
  return { name, covers, stone, work, share, width, thickness, voids };
}

/** Stone on a bed: its depth and voids are the bed's own, voids here only where mortar fills them. */
function bed(name: string, kindOfBed: string, stone: string, work: string, share = 1, voids = 0.4) {
  return { ...place(name, "stream bed", stone, work, [0, 0, voids], share), bed: kindOfBed };
}
