import { draftLine, heading, type PageLine, rows } from "./page-lines.js";
import { counted } from "./words.js";

const look = (row: number): string => {
  const from = (column: string) => `PICK(looks.${column},looks.name,INDEX(falls.look,${row}))`;
  return `IF(LEN(${from("said")})>0,${from("said")},INDEX(falls.look,${row}))`;
};

const falls = rows(12, (row) => ({
  says: `~•  {falls.name[${row}]}: a fall {falls.width[${row}]} wide and {falls.drop[${row}]} high, {${look(row)}}.`,
  when: `INDEX(falls.width,${row})>0`,
}));

const pools = rows(6, (row) => ({
  says: `~•  {pools.name[${row}]}: a pool about {pools.length[${row}]} by {pools.width[${row}]}, up to {pools.depth[${row}]|up} deep.`,
  when: `INDEX(pools.length,${row})>0`,
}));

const berms = rows(4, (row) => ({
  says: `~•  {berms.name[${row}]}: a mound of soil about {berms.height[${row}]} high.`,
  when: `INDEX(berms.height,${row})>0`,
}));

const trees = rows(6, (row) => ({
  says: `~•  We keep this tree: {trees.name[${row}]}.`,
  when: `INDEX(trees.trunk,${row})>0`,
}));

const options = rows(6, (row) => ({
  says: `~[   ]  Option, not in the price above: {options.description[${row}]}, {options.option_price[${row}]|2}.`,
  when: `AND(LEN(INDEX(options.description,${row}))>0,NOT(INDEX(options.taken,${row})))`,
}));

const optionsTaken = rows(6, (row) => ({
  says: `~[x]  Option taken: {options.description[${row}]}, {options.option_price[${row}]|2}.`,
  when: `AND(LEN(INDEX(options.description,${row}))>0,INDEX(options.taken,${row}))`,
}));

const draws = rows(6, (row) => ({
  says: `~•  {draws.name[${row}]}: {draws.amount[${row}]|2}`,
  when: `INDEX(draws.share,${row})>0`,
}));

const others = rows(6, (row) => ({
  says: `~•  By others, in our price: {subcontracts.work[${row}]}.`,
  when: `INDEX(subcontracts.amount,${row})>0`,
}));

const electricianIn = 'electrical_work="by an electrician in our price"';
const hasPools = "SUM(pools.length)>0";
const told = (name: string) => `LEN(${name})>0`;
const streams = "SUM(runs.length)>0";

const basin =
  "•  A lined basin {basin_length} long, {basin_width} wide and {basin_depth|up} deep, filled with storage crates and stone, out of sight. It holds about {basin_water_held|0}";
const start = 'We start {IF(LEN(start_words)>0,start_words,"in "&start_month_said)}.';
/** `1 working day`, `9 working days`. */
const workingDays = (name: string) =>
  `{${name}|0|bare} working {IF(ROUND(${name}/1[days],0)=1,"day","days")}`;

/** What the customer reads, from scope to signature. No codes, costs or margins. */
export const proposalLines: readonly PageLine[] = [
  draftLine,
  {
    says: '"DRAFT, not to be handed out: no company is named on sheet Job, so nobody offers."',
    when: "LEN(TRIM(company))=0",
  },
  { says: "company_said", when: told("company_said") },
  {
    says: `~For {customer}, {site}. {IF(LEN(proposal_number)>0,"Offer "&proposal_number&". ","")}Prepared by {estimator} on {bid_date_said}, good until {bid_good_until_said}.`,
  },
  heading("What we will build"),
  {
    says: "~{job_title}. A pump in a buried basin lifts the water; it runs down over stone and sinks back into the basin through the gravel. There is no open pond at the bottom.",
  },
  ...falls,
  {
    says: "~•  A stream {runs_length} long.",
    when: streams,
  },
  ...pools,
  { says: '"•  A pool holds standing water, at rest too."', when: hasPools },
  { says: '"•  "&child_caution', when: told("child_caution") },
  ...berms,
  { says: `~${basin}.`, when: "OR(NOT(weather_is_local),days_it_lasts<1[days])" },
  {
    says: `~${basin}: about {days_it_lasts|0} of warm weather without a fill.`,
    when: "AND(weather_is_local,days_it_lasts>=1[days])",
  },
  {
    says: "~•  A pump and pipework that bring {pump_flow_hourly|0} to the falls, with valves to set the flow.",
  },
  {
    says: "~•  About {stone_tons|0} of stone; the largest weighs about {heaviest_stone|0}.",
    when: "AND(stone_tons>0,heaviest_stone>0)",
  },
  { says: "~•  About {stone_tons|0} of stone.", when: "AND(stone_tons>0,heaviest_stone<=0)" },
  { says: "~•  Walls, about {wall_face|0} of wall face.", when: "wall_face>0" },
  {
    says: `~•  {${counted("lights_wanted", "underwater light", "underwater lights")}}.`,
    when: "lights_wanted>0",
  },
  {
    says: '"•  An automatic fill line, made so that basin water cannot get back into your drinking water."',
    when: "fill_line_length>0",
  },
  {
    says: '"•  The electric circuit to the pump (breaker, conduit in its trench, wire, ground-fault protected outlet), by our own licensed electrician."',
    when: 'electrical_work="by us"',
  },
  {
    says: '"•  The electric circuit to the pump (breaker, conduit in its trench, wire, ground-fault protected outlet), by a licensed electrician."',
    when: `AND(${electricianIn},electric_counted)`,
  },
  {
    says: '"•  Shoring of the deep digs, set and taken out again."',
    when: "shored_face>0",
  },
  {
    says: `~•  {${counted("permits_paid", "permit", "permits")}}, as the work needs.`,
    when: "permits_paid>0",
  },
  {
    says: `~•  {${counted("engineer_designs", "engineer's design", "engineer's designs")}}, for walls and deep digs that need one.`,
    when: "engineer_designs>0",
  },
  ...others,
  ...trees,
  {
    says: "~•  In heavy rain the basin overflows at {overflow_place}. We clean up what we crossed.",
  },
  heading("Price and payment"),
  {
    says: "~The price for this work is {price|2}, sales tax on material included.",
  },
  ...optionsTaken,
  { says: "~With the options taken: {contract_price|2}.", when: "options_taken>0" },
  ...options,
  ...draws,
  heading("Time and changes"),
  {
    says: `~${start} The work takes about ${workingDays("work_days")}, and longer where rain stops it.`,
    when: "NOT(rain_is_local)",
  },
  {
    says: `~${start} The work takes about ${workingDays("work_days")}. Allowing for the usual rain in {start_month_said}, ${workingDays("days_allowed")}, or about {calendar_days|0|bare} calendar {IF(ROUND(calendar_days/1[days],0)=1,"day","days")}.`,
    when: "rain_is_local",
  },
  {
    says: '"Changes are agreed in writing, with their price, before we do them."',
  },
  heading("Running and upkeep"),
  {
    says: "~The pump draws {watts_said}. Running {hours_a_day|0} at {energy_rate_said} it costs about {energy_month_said} while it runs, or {energy_cost_a_year|0} a year of {months_a_year|0} months.",
  },
  {
    says: "~In warm weather about {loss_a_day|0} evaporate or splash away each day and must be made up.",
    when: "AND(weather_is_local,loss_a_day>=1[gal])",
  },
  {
    says: '"Water that evaporates or splashes away must be made up, most in warm and windy weather."',
    when: "NOT(weather_is_local)",
  },
  {
    says: '"Look at the water level each week. Each month and after storms, unplug the pump, then rinse its intake. Where it freezes, take the pump out for the winter and drain the pipes, or keep it running as we will show you."',
  },
  heading("Not included"),
  {
    says: `~Rock, buried waste, roots or private lines that the site walk could not show; permits not named above; {IF(electrical_work="by the customer","the electric circuit to the pump, with its breaker, conduit, trench, ground-fault protected outlet and permit; ","")}{IF(AND(walls_to_permit>0,permit_work="by the customer"),"the permit and the engineer's design for the walls; ","")}lawn repair beyond raking and seed. Electrical work is done by a licensed electrician to the local code.`,
  },
  {
    says: "~The circuit that you provide for the pump must carry {circuit_current|1} at {supply_voltage|0} for hours on end, which asks for a breaker of {FIXED(ROUNDUP(ROUND(breaker_needed/1[A],6),0),0)} amperes or more: your licensed electrician decides.",
    when: 'electrical_work="by the customer"',
  },
  heading("Please note"),
  {
    says: '"Unplug the pump before you reach into the water or open the vault; keep its lid fastened."',
  },
  {
    says: `~Even shallow water{IF(${hasPools},", such as that of the pool,","")} is a danger to small children: watch them near it. Local rules may ask for a barrier. Public lines are marked before we dig (call 811); please show us your private ones.`,
  },
  { says: "~Warranty: {warranty}", when: told("warranty") },
  heading("Agreed"),
  { says: '"Customer: ______________________________     Date: ________________"' },
  { says: '"Contractor: ____________________________     Date: ________________"' },
];
