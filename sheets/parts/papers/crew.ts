import { type Block, panel, place, row } from "../../../engine/template/index.js";
import { crewPage, stepMark } from "../../plan/crew-page.js";
import { headingMark } from "../../plan/page-line.js";
import { counted } from "../../vocabulary/counted.js";
import type { Whole } from "../brought.js";
import { draftOf } from "./letterhead.js";
import { pageLines } from "./page-lines.js";
import { saidTo } from "./said-to.js";
import { siteSketch } from "./site-sketch.js";

const said = saidTo("crew");
const hired = counted("machine_hire_days/1[days]", "day", "days");

/** What the crew builds from: the dangers and the drawings first, then the steps in their order. */
export function crew(all: Whole): { readonly page: readonly Block[]; readonly working: readonly Block[] } {
  const names = crewPage.map(({ name }) => name);
  const stops = names.filter((name) => /^(stop|caution): /.test(name));
  const steps = names.filter((name) => name !== "draft" && !stops.includes(name));
  const { working, flows } = pageLines("crew", "Work to do", "crew", all.crew, [
    { name: "crew_stops", sections: stops, paper: { alarmMark: "STOP", size: 9, spare: 1 } },
    {
      name: "crew_steps",
      sections: steps,
      across: [1, 3],
      beside: [4, 8],
      paper: {
        size: 9,
        spare: 0,
        ruled: true,
        headingMark: headingMark.trim(),
        boldMark: stepMark,
        boxes: {
          mark: stepMark,
          across: [[12, 1]],
        },
      },
    },
  ]);
  const head = panel([
    ...draftOf("crew", ["crew_lines.says", 1]),
    row(20, place([1, 12], "title", said("crew_title", "~Work to do: {job_title}"))),
    row(
      14,
      place([1, 6], "text", said("crew_site", '~{site}{JOINED("  ·  ",company)}')),
      place(
        [7, 6],
        "right",
        said(
          "crew_size_said",
          `~{crew_size|0} people, {work_days|0} of work, {IF(by_hand,"by hand","machine on hire "&${hired})}`,
        ),
      ),
    ),
    row(
      16,
      place([1, 1], "label", "Foreman"),
      place([2, 4], "field", ""),
      place([7, 1], "label", "Started"),
      place([8, 2], "field", ""),
      place([10, 1], "label", "Ended"),
      place([11, 2], "field", ""),
    ),
    row(4),
    row(16, place([1, 12], "heading", "Stop first")),
    row(
      13,
      place(
        [1, 12],
        "small",
        "STOP: not settled, call the office before that work begins. Anyone may stop the work. Local code and licensed trades come first.",
      ),
    ),
  ]);
  const build = panel([
    row(
      24,
      place([1, 3], "heading", "In this order, man-hours"),
      place([4, 8], "heading", "Sizes, and what to look out for"),
      place([12, 1], "caption", "Hours, initials"),
    ),
  ]);
  // drawings first, then the tables that go with them
  const isDrawing = ({ kind }: Block) => kind === "chart";
  const drawings = [...all.crewDrawings.filter(isDrawing), ...all.crewDrawings.filter((one) => !isDrawing(one))];
  const page = [head, flows.crew_stops as Block, ...drawings, siteSketch(), build, flows.crew_steps as Block];
  return { page, working };
}
