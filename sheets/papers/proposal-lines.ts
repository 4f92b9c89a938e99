import { draftLine, heading, type PageLine } from "./page-lines.js";

const rows = (count: number, line: (row: number) => PageLine): PageLine[] =>
  Array.from({ length: count }, (_, i) => line(i + 1));

const falls = rows(12, (row) => ({
  says: `~•  {falls.name[${row}]}: a fall {falls.width[${row}]|1} wide and {falls.drop[${row}]|1} high, {falls.look[${row}]}.`,
  when: `INDEX(falls.width,${row})>0`,
}));

const options = rows(6, (row) => ({
  says: `~•  Option, not in the price above: {options.description[${row}]}, {options.option_price[${row}]|0}.`,
  when: `AND(LEN(INDEX(options.description,${row}))>0,NOT(INDEX(options.taken,${row})))`,
}));

const optionsTaken = rows(6, (row) => ({
  says: `~•  Option taken: {options.description[${row}]}, {options.option_price[${row}]|0}.`,
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

/** What the customer reads, from scope to signature. No codes, costs or margins. */
export const proposalLines: readonly PageLine[] = [
  draftLine,
  { says: "~For {customer}, {site}." },
  { says: "~Prepared by {estimator} on {bid_date}. Good until {offer_until}." },
  heading("What we will build"),
  {
    says: "~{job_title}. A pump in a buried basin lifts the water; it runs down over stone and sinks back into the basin through the gravel. There is no open pond at the bottom.",
  },
  ...falls,
  { says: "~•  A stream, pools included, {stream_length|0} long.", when: "stream_length>0" },
  {
    says: "~•  A lined basin {basin_length|1} long, {basin_width|1} wide and {basin_depth|1} deep, filled with storage crates and stone, out of sight. It holds about {basin_water_held|0}; it is planned to run at least {days_without_fill|0} without a fill in warm weather.",
  },
  {
    says: "~•  A pump and pipework that bring {pump_flow_hourly|0} to the falls, with a valve on each outlet to set its flow.",
  },
  {
    says: "~•  About {stone_tons|0} of stone; the largest weighs about {heaviest_stone|0}.",
    when: "stone_tons>0",
  },
  { says: "~•  Walls of about {wall_face|0} of face.", when: "wall_face>0" },
  { says: "~•  Underwater lights: {lights_wanted|0}.", when: "lights_wanted>0" },
  {
    says: '"•  An automatic fill line that makes up what evaporates, made so that basin water cannot get back into your drinking water."',
    when: "fill_line_length>0",
  },
  ...others,
  heading("Price"),
  { says: "~The price for this work is {price|0}, sales tax on material included." },
  ...optionsTaken,
  { says: "~With the options taken: {contract_price|0}.", when: "options_taken>0" },
  ...options,
  heading("Payment"),
  ...draws,
  heading("Time"),
  {
    says: "~About {work_days|0|bare} working days. Allowing for the usual rain of that time of year, {days_allowed|0|bare} working days, or about {calendar_days|0|bare} on the calendar.",
  },
  heading("What it costs to run"),
  {
    says: "~The pump draws about {pump_watts|0}. Running {hours_a_day|0} at {energy_rate|2} it costs about {energy_cost_a_month|0} while it runs, or {energy_cost_a_year|0} a year of {months_a_year|0} months.",
  },
  {
    says: "~In warm weather about {loss_a_day|0} evaporate or splash away each day and must be made up.",
  },
  heading("Upkeep"),
  {
    says: '"Look at the water level each week. Each month and after storms, unplug the pump, then rinse its intake."',
  },
  {
    says: '"Where it freezes, take the pump out for the winter and drain the pipes, or keep it running as we will show you."',
  },
  heading("Not included"),
  {
    says: '"Rock, buried waste, roots or private lines that the site walk could not show; permits and electrical work not named above; lawn repair beyond raking and seed."',
  },
  { says: '"Electrical work is done by a licensed electrician to the local code."' },
  heading("Please note"),
  {
    says: '"Water and electricity: the pump stands on a ground-fault protected circuit. Unplug the pump before you reach into the water or open the vault; keep its lid fastened."',
  },
  {
    says: '"Even shallow water is a danger to small children: watch them near it. Local rules may ask for a barrier."',
  },
  { says: '"Public lines are marked before we dig (call 811); please show us your private ones."' },
  {
    says: '"The pools hold standing water."',
    when: "SUM(pools.length)>0",
  },
  heading("Changes"),
  { says: '"Changes are agreed in writing, with their price, before we do them."' },
  heading("Agreed"),
  { says: '"Customer: ______________________________     Date: ________________"' },
  { says: '"Contractor: ____________________________     Date: ________________"' },
];
