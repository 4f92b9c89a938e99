import * as known from "./quantity.js";

/**
 * The quantities that come with the program, by name: what a cell measures, with its unit in US customary
 * units and in SI and the decimals it is shown with. A trade declares its own by `quantity`.
 */
export const quantities = Object.freeze({
  text: known.text,
  yesno: known.yesno,
  date: known.date,
  number: known.number,
  precise: known.precise,
  count: known.count,
  percent: known.percent,
  length: known.length,
  smallLength: known.smallLength,
  bore: known.bore,
  area: known.area,
  spaceVolume: known.spaceVolume,
  flow: known.flow,
  hourlyFlow: known.hourlyFlow,
  head: known.head,
  speed: known.speed,
  power: known.power,
  voltage: known.voltage,
  voltageDrop: known.voltageDrop,
  current: known.current,
  energy: known.energy,
  weight: known.weight,
  tons: known.tons,
  density: known.density,
  areaWeight: known.areaWeight,
  angle: known.angle,
  hours: known.hours,
  days: known.days,
  hoursADay: known.hoursADay,
  money: known.money,
  hourlyRate: known.hourlyRate,
  dailyRate: known.dailyRate,
  monthlyCost: known.monthlyCost,
  energyRate: known.energyRate,
  moneyPerLength: known.moneyPerLength,
});
