import {
  angle,
  calc,
  check,
  count,
  decide,
  lines,
  number,
  office,
  published,
  smallLength,
  weight,
  yesno,
} from "../../../engine/template/index.js";

/** The heaviest cut against the people who carry it. */
export const carrying = lines("Carrying the heaviest cut", {
  liner_weight_heaviest: calc(weight, "MAX(liner_pieces.weight)", "Heaviest cut of liner", {
    strong: true,
  }),
  lift_constant: published(weight, "Load constant", {
    working: true,
    value: 51,
    source: "NIOSH Publication 94-110: 51 lb",
  }),
  lift_distance: office(smallLength, "Hands in front of ankles", {
    default: 15,
    least: 10,
    most: 25,
  }),
  lift_height: office(smallLength, "Height of hands at start", {
    default: 15,
    least: 0,
    most: 70,
  }),
  lift_travel: office(smallLength, "Vertical travel of the load", {
    default: 20,
    least: 10,
    most: 70,
  }),
  lift_twist: office(angle, "Twist of the body", { default: 0, least: 0, most: 135 }),
  lift_frequency: office(number, "Frequency multiplier", {
    note: "1 for a rare lift.",
    default: 1,
    least: 0,
    most: 1,
  }),
  lift_coupling: office(number, "Grip multiplier", {
    note: "Good 1, fair 0.95, poor 0.9.",
    default: 0.9,
    least: 0.9,
    most: 1,
  }),
  lift_limit: calc(
    weight,
    "LIFT_LIMIT(lift_constant,lift_distance,lift_height,lift_travel,lift_twist,lift_frequency,lift_coupling)",
    "Lifting limit per person",
    {
      decimals: 1,
      note: "The equation is made for one person; sharing a load out evenly is an assumption.",
    },
  ),
  people_to_carry: decide(count, "People on hand", {
    default: 4,
    least: 1,
    most: 40,
    whole: true,
  }),
  liner_by_machine: decide(yesno, "Liner carried by machine", { default: false }),
  liner_people: calc(
    count,
    "IF(lift_limit>0,WHOLE_UP(liner_weight_heaviest/MAX(0.1[lb],lift_limit)),999)",
    "People needed to carry",
    { strong: true },
  ),
  liner_carried: check(
    "OR(liner_by_machine,liner_people<=people_to_carry)",
    "The heaviest cut weighs {liner_weight_heaviest}: {liner_people} people at {lift_limit} each, but {people_to_carry} are on hand. Raise people_to_carry on sheet Decisions, or use machines.",
    { label: "Liner too heavy to carry", level: "look" },
  ),
});
