import { line } from "../../plan/page-line.js";
import { part } from "../part.js";
import { jobBlocks } from "./job.js";

/** An electrician quoted the circuit. */
const electricQuoted = "SUMPRODUCT(subcontracts.electrical*(subcontracts.amount>0))>0";

export const job = part("Job", "Customer, dates, company, and how the water feature will run.", {
  blocks: { Job: [jobBlocks] },
  crew: [
    line(
      "job",
      'Site walked{IF(LEN(walked_by)>0," by "&walked_by,"")}{IF(ISBLANK(walked_on),""," on "&walked_on_said)}.',
      "OR(LEN(walked_by)>0,NOT(ISBLANK(walked_on)))",
    ),
    line("before", "Call 811 and wait for the marks. Ask for private lines. Mark trees to be kept."),
  ],
  handOver: [line("warranty", "As agreed: {warranty}", "LEN(warranty)>0")],
  proposal: [
    line(
      "opening",
      "DRAFT, not to be handed out: no company is named on sheet Office rules, so nobody offers.",
      "LEN(TRIM(company))=0",
    ),
    line(
      "not included",
      `Rock, buried waste, roots or private lines that the site walk could not show; {IF(permits_paid>0,"permits beyond those named in this proposal; ","")}{IF(electrical_work="by the customer","the electric circuit to the pump, with its breaker, conduit, trench, ground-fault protected outlet and permit; ","")}{IF(AND(walls_to_permit>0,permit_work="by the customer"),"the permit and the engineer's design for the walls; ","")}{IF(lawn_area>0,"lawn repair beyond raking and seed; ","")}{IF(plants_wanted>0,"plants beyond those named","plants")}.`,
    ),
    line(
      "not included",
      `No permit is in the price{IF(${electricQuoted}," but what the electrician's quote covers","")}.`,
      "permits_paid=0",
    ),
    line("warranty", "Warranty: {warranty}", "LEN(warranty)>0"),
  ],
});
