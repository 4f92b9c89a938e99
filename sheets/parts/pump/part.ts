import { step } from "../../plan/crew-page.js";
import { bullet, line } from "../../plan/page-line.js";
import { curveFormulas } from "../../vocabulary/curve-points.js";
import { pumpFormulas } from "../../vocabulary/pump.js";
import { part } from "../part.js";
import { production } from "../rates.js";
import { task } from "../task.js";
import { curvePoints } from "./curve-chart.js";
import { pumpBlocks } from "./pump.js";
import { pumpsTable } from "./pumps-table.js";

/** Its hours are in those of the first water. */
const testRun = "Set the pump, test run";

export const pump = part("Pump", "Which pump brings the water up, and what it costs to run.", {
  blocks: { Pump: pumpBlocks, Pumps: [pumpsTable], "Drawing points": curvePoints },
  formulas: [...pumpFormulas, ...curveFormulas],
  tasks: [
    task(
      "First water, tune the valves",
      "first water",
      "1",
      production("start-up", "Set the pump, fill, tune the valves", "each", 0.15),
    ),
  ],
  crew: [
    {
      ...step("step: test run", "Set the pump, test run (hours: first water)"),
      task: testRun,
    },
    bullet(
      "step: test run",
      "Pump {pump_code}: {pump_description}, outlet {INDEX(pumps.outlet_size,pump_row)}.",
      "pump_row>0",
    ),
    bullet(
      "step: test run",
      "Set its controller to {pump_speed|0} of full speed.",
      "AND(pump_row>0,ROUND(pump_speed,3)<1)",
    ),
    bullet("step: test run", "{run_before} Circuit tested, basin full: {run_said}, look for water beside the liner."),
    bullet("step: test run", "{run_marked}; set stone to it with the power off."),
    bullet("step: first water", "Set the flows finally by eye and meter."),
  ],
  proposal: [
    bullet(
      "scope",
      `A pump and pipework that bring about {flow_about|0} to {fed_said}, with {IF(lines_in_use>1,"valves","a valve")} to set the flow.`,
    ),
    line(
      "running",
      "The pump draws {watts_said}. Running {hours_a_day|0} at {energy_rate_said} it costs about {energy_month_said} while it runs, or about {energy_year_about|0} a year, for the {months_a_year|0} months that it is run.",
    ),
    line(
      "upkeep",
      "Look at the water level each week. Each month and after storms, unplug the pump, then rinse its intake. Where it freezes, take the pump out for the winter and drain the pipes, or keep it running as we will show you.",
    ),
    line("note: pump", "Unplug the pump before you reach into the water or open the vault; keep its lid fastened."),
  ],
  handOver: [
    bullet(
      "cautions",
      "Unplug the pump, or switch its breaker off, before hands go into the water or the vault is opened.",
    ),
    bullet("run", "Pump: {pump_description} ({pump_code}).", "pump_row>0"),
    bullet(
      "run",
      "Its controller is set to {pump_speed|0} of full speed; as left: ______ %.",
      "AND(pump_row>0,ROUND(pump_speed,3)<1)",
    ),
    bullet("run", "Running {hours_a_day|0} it costs about {energy_month_said} for power while it runs."),
    bullet("week", "Each week: look at the level in the vault. A pump that runs dry is ruined."),
    bullet("week", "Each month and after storms: power off, then rinse the pump's intake."),
    bullet(
      "fall",
      "Keep leaves out with a net. Before hard frost: take the pump out, drain pipes and valves, keep the pump in a bucket of water where it does not freeze; or leave it running as we showed you.",
    ),
    bullet(
      "spring",
      "Rinse stone and vault, set the pump back, fill, run for an hour, look for water beside the liner, then set the valves as listed here.",
    ),
    bullet(
      "call",
      "The level falls more than usual, the breaker trips, the flow drops though the intake is clean, or a stone moves.",
    ),
    bullet("call", "Telephone: {company_phone}", "LEN(company_phone)>0"),
  ],
});
