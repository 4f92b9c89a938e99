import { bullet, line, under } from "../../plan/page-line.js";
import { wireTable } from "../../tables/wires.js";
import { electricFormulas } from "../../vocabulary/electric.js";
import { part } from "../part.js";
import { hire, production, wage } from "../rates.js";
import { task } from "../task.js";
import { electricCautions } from "./cautions.js";
import { circuit } from "./circuit.js";
import { circuitGoods, circuitSaid } from "./goods.js";
import { electricWork } from "./work.js";

const conduitTask = "Run conduit and wire to the pump";
const conduitRun = production("conduit-run", "Run conduit and pull its wire", "ft", 14);
const circuitFitted = production("circuit-fitted", "Fit breaker and outlet, test the circuit", "each", 0.3);
const material = "breaker, conduit in its trench, wire, ground-fault protected outlet";

export const electrical = part(
  "Electrical",
  "The circuit that feeds the pump and what runs beside it, and who does it.",
  {
    section: "Electric",
    blocks: { Electric: [electricWork, circuit], Wording: [circuitSaid] },
    below: { Electric: [electricCautions, wireTable] },
    formulas: electricFormulas,
    // NEC Table 300.5: 18 in of cover over plastic conduit (from memory), and room for the conduit
    trenches: [
      { trench: "conduit to the pump", kind: "narrow", pipe: "conduit_trench", bedding: 0, width: 6, depth: 20 },
    ],
    takeoff: circuitGoods,
    rates: [
      wage("wage-electrician", "Wage of our own licensed electrician", "$/hour"),
      hire("electrician-hour", "Licensed electrician, by the hour", "$/hour"),
      ...[conduitRun, circuitFitted],
    ],
    tasks: [
      task(conduitTask, "pipe", 'IF(electrical_work="by us",panel_distance,0)', conduitRun),
      task("Fit breaker and outlet, test the circuit", "circuit", 'IF(electrical_work="by us",1,0)', circuitFitted),
    ],
    handOver: [
      bullet(
        "run",
        "Breaker in the panel: no. ______ It shuts off pump and outlet. Press the test button of the outlet each month.",
      ),
      bullet(
        "cautions",
        "Anything electrical: a licensed electrician only. If the ground-fault outlet trips: unplug all that it feeds, then reset it. If it trips again, leave it off and call.",
      ),
    ],
    crew: [
      bullet(
        "step: circuit",
        "Circuit to the pump, {supply_voltage|0}, {circuit_current|1}, by our licensed electrician: {panel_distance|0} of conduit, wire {wire_size} (two conductors and ground), breaker of {breaker_rating|0}, ground-fault protected outlet. Place and distance from the water: as the electrician and local code say.",
        'electrical_work="by us"',
      ),
      ...under(
        "Set the pump, test run",
        bullet(
          "step: circuit",
          "Circuit to the pump by an electrician, {supply_voltage|0}, {circuit_current|1}: no pump is started before it is done and tested.",
          'electrical_work="by an electrician in our price"',
        ),
        bullet(
          "step: circuit",
          "Circuit to the pump by the customer, {supply_voltage|0}, {circuit_current|1}: no pump is started before their electrician has done and tested it.",
          'electrical_work="by the customer"',
        ),
      ),
      ...under(
        conduitTask,
        bullet(
          "step: pipe",
          "{panel_distance|0} of conduit, wire {wire_size}, by our licensed electrician. Not filled over before it is inspected, where the code asks for that.",
          'electrical_work="by us"',
        ),
      ),
      ...under(
        "Dig narrow trenches, hours with filling",
        // without a quote they are priced and ordered here
        bullet(
          "step: trenches",
          'Conduit and wire: {IF(electric_counted,"they come with our orders, and the electrician lays them","the electrician brings and lays them")}. Call when the trench is open, and leave it open until they have.',
          'AND(electrical_work="by an electrician in our price",conduit_trench>0)',
        ),
      ),
      bullet(
        "caution: power",
        "Licensed electrician, ground-fault protection, no splices under water; power off while hands are in the basin.",
      ),
    ],
    proposal: [
      bullet(
        "supply",
        `The electric circuit to the pump (${material}), by our own licensed electrician.`,
        'electrical_work="by us"',
      ),
      bullet(
        "supply",
        `The electric circuit to the pump (${material}), by a licensed electrician.`,
        'AND(electrical_work="by an electrician in our price",electric_counted)',
      ),
      line("note: pump", "Electrical work is done by a licensed electrician to the local code."),
      line(
        "not included",
        "The circuit that you provide for the pump must carry {circuit_current|1} at {supply_voltage|0} for hours on end, which asks for a breaker of {breaker_standard|0|bare} amperes or more: your licensed electrician decides.",
        'electrical_work="by the customer"',
      ),
    ],
  },
);
