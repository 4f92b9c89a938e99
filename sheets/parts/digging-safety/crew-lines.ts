import type { CrewSection } from "../../plan/crew-page.js";
import { bullet, eachRow, line, type PlacedLine } from "../../plan/page-line.js";
import { counted } from "../../vocabulary/counted.js";
import type { Whole } from "../brought.js";
import { placesDug } from "./places.js";

export const crewOfSafety = (all: Pick<Whole, "trenches" | "digs">): readonly PlacedLine<CrewSection>[] => [
  line(
    "stop: digging",
    "STOP. {digs_to_inspect}: nobody goes in until a competent person has looked for signs of a cave-in, that day, and has signed.{CHAR(10)}Name ____________ Date ________ Signs: yes / no   Name ____________ Date ________ Signs: yes / no{CHAR(10)}Name ____________ Date ________ Signs: yes / no   Name ____________ Date ________ Signs: yes / no{CHAR(10)}Name ____________ Date ________ Signs: yes / no   Name ____________ Date ________ Signs: yes / no",
    "NOT(dig_inspected)",
  ),
  ...eachRow(
    "stop: digging",
    placesDug(all),
    "STOP. {place} is dug {deep|up} deep in soil {dig_soil_type}, protection: {by}. Shore it, shield it, or slope it {safe_slope} to 1 before anyone goes in.",
    { when: "NOT(protected)" },
  ),
  line(
    "stop: digging",
    "STOP. {deepest_dig|up} deep: over {engineer_depth|down} an engineer designs the protection. Do not dig before.",
    "NOT(dig_within_tables)",
  ),
  line(
    "stop: digging",
    "STOP. Ladders or ramps: {ladders_needed|0} are needed, none farther than {ladder_travel|down} from anyone in the dig; the plan brings {ladders_brought|0}.",
    "NOT(ladders_enough)",
  ),
  line(
    "stop: digging",
    "STOP. Dirt from the dig is planned {dirt_setback|down} from the edge: it stays {dirt_setback_least|up} back.",
    "NOT(dirt_set_back)",
  ),
  bullet(
    "step: dig",
    "Shore or shield {shored_face|0} of face before anyone goes in; pull it as the dig is filled.",
    "shored_face>0",
  ),
  bullet(
    "step: dig",
    "Deepest dig: {deepest_place}, {deepest_dig|up}. Under {protection_depth|down} it may stand unprotected only while a competent person sees no sign of a cave-in (29 CFR 1926.652); from there on, or with any sign, nobody goes in without protection.",
  ),
  bullet(
    "step: dig",
    "{dig_inspected_by} looked on {dig_inspected_on_said}: {cave_in_signs} of a cave-in. Look again each day before work and after every rain.",
    "AND(LEN(digs_to_inspect)>0,inspection_recorded)",
  ),
  bullet(
    "step: dig",
    `Bring {${counted("ladders_brought", "ladder or ramp", "ladders or ramps")}}; nobody in the dig is farther than {ladder_travel|down} from one.`,
    "AND(ladders_needed>0,ladders_enough)",
  ),
  bullet("step: dig", "Dirt stays {dirt_setback|up} back from every edge."),
];
