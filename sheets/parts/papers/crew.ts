import { type Block, type CalcDeclaration, calc, panel, place, row, text } from "../../../engine/template/index.js";
import { crewPage, stepMark } from "../../plan/crew-page.js";
import type { Whole } from "../brought.js";
import { letterhead } from "./letterhead.js";
import { pageLines } from "./page-lines.js";

const said = (name: string, formula: string): readonly [string, CalcDeclaration] => [
  name,
  calc(text, formula, "", { reader: "crew" }),
];

/** What the crew builds from: the dangers and the drawings first, then the steps in their order. */
export function crew(all: Whole): { readonly page: readonly Block[]; readonly working: readonly Block[] } {
  const names = crewPage.map(({ name }) => name);
  const stops = names.filter((name) => /^(stop|caution): /.test(name));
  const steps = names.filter((name) => name !== "draft" && !stops.includes(name));
  const { working, flows } = pageLines("crew", "Work to do", "crew", all.crew, [
    { name: "crew_stops", sections: stops, paper: { alarmMark: "STOP" } },
    {
      name: "crew_steps",
      sections: steps,
      across: [1, 10],
      paper: {
        boldMark: stepMark,
        boxes: {
          mark: stepMark,
          across: [
            [11, 1],
            [12, 1],
          ],
        },
      },
    },
  ]);
  const head = panel([
    ...letterhead("crew", ["crew_lines.says", 1]),
    row(22, place([1, 12], "title", said("crew_title", "~Work to do: {job_title}"))),
    row(
      16,
      place([1, 7], "text", said("crew_site", "site")),
      place(
        [8, 5],
        "right",
        said("crew_size_said", "~{crew_size|0} people, {work_days|0} of work, machine on hire {machine_hire_days|0}"),
      ),
    ),
    row(
      20,
      place([1, 2], "label", "Foreman"),
      place([3, 4], "field", ""),
      place([8, 2], "label", "Started"),
      place([10, 3], "field", ""),
    ),
    row(8),
    row(18, place([1, 12], "heading", "Stop first")),
    row(
      28,
      place(
        [1, 12],
        "small",
        "What begins with STOP is not settled: call the office, and do not begin that work before it is. Anyone may stop the work. Local code and the licensed trades come before this paper.",
      ),
    ),
  ]);
  const build = panel([
    row(8),
    row(
      24,
      place([1, 10], "heading", "In this order"),
      place([11, 1], "caption", "Hours"),
      place([12, 1], "caption", "Initials"),
    ),
  ]);
  const page = [head, flows.crew_stops as Block, ...all.crewDrawings, build, flows.crew_steps as Block];
  return { page, working };
}
