import type { CrewSection } from "../../plan/crew-page.js";
import type { HandOverSection } from "../../plan/hand-over-page.js";
import { bullet, line, type PlacedLine } from "../../plan/page-line.js";
import type { ProposalSection } from "../../plan/proposal-page.js";

export const crewOfBasin: readonly PlacedLine<CrewSection>[] = [
  bullet(
    "step: dig",
    "Basin: {basin_length|up} by {basin_width|up} inside, {basin_depth|up} deep to the rim. Dig {dig_bottom_length|up} by {dig_bottom_width|up}{basin_top_said}, {dig_depth|up} deep.",
  ),
  bullet(
    "step: basin",
    'Crates: {crate_columns|0} along, {crate_rows|0} across, {crate_layers|0} high, less {crates_less}: {crates_needed|0} to lay, each {crate_along|0} along, {crate_across|0} across, {crate_height|0} high.{IF(vaults_needed>1," Vaults: "&FIXED(vaults_needed,0)&".","")}{IF(extensions_needed>0," Extension rings: "&FIXED(extensions_needed,0)&".","")}',
  ),
  bullet(
    "step: basin",
    "Crates begin {crate_gap|0|up} from {crates_from}; the vault's near side {vault_near|0} from it, in the corner.",
    "vaults_needed>0",
  ),
  bullet(
    "step: basin",
    "Stone: at least {crate_gap|0|up} around crates and vault, {far_gap|0} at the far end, {stone_over_crates|0} over the crates, up to the rim.",
    "crates_needed>0",
  ),
  bullet("step: basin", "Levels as drawn; when the pump starts, the level falls by about {basin_falls_by}."),
  bullet(
    "step: basin",
    "The design storm, {storm_rain}, spills {rain_overflow|0} over at {overflow_said}: lay stone there.",
    "AND(storm_known,rain_overflow>0)",
  ),
  bullet(
    "step: basin",
    "In heavy rain the basin spills over at {overflow_said}: lay stone there.",
    "OR(NOT(storm_known),rain_overflow<=0)",
  ),
  bullet("caution: basin", "Cover or fence the open basin at night."),
];

const lined =
  "A lined basin {basin_length} long, {basin_width} wide and {basin_depth|up} deep, filled with storage crates and stone, out of sight. It holds about {basin_water_about|0}";

export const proposalOfBasin: readonly PlacedLine<ProposalSection>[] = [
  bullet("scope", `${lined}.`, "OR(NOT(weather_known),days_it_lasts<1[days])"),
  bullet(
    "scope",
    `${lined}; if the automatic fill ever fails, it runs about {days_it_lasts|0} in warm weather.`,
    "AND(weather_known,days_it_lasts>=1[days],fill_line_length>0)",
  ),
  bullet(
    "scope",
    `${lined}, enough for about {days_it_lasts|0} of warm weather between two fillings.`,
    "AND(weather_known,days_it_lasts>=1[days],fill_line_length<=0)",
  ),
  bullet("storm", "In heavy rain, water runs over at {overflow_said}."),
  bullet(
    "storm",
    'When we leave, we clean up the ground that we crossed.{IF(lawn_area>0,""," Lawn worn by our way across it is not repaired in this price; ask us for seed or sod as an option.")}',
  ),
  line(
    "water lost",
    "In warm weather about {loss_about|0} evaporate or splash away each day and must be made up.",
    "AND(weather_known,loss_a_day>=1[gal])",
  ),
  line(
    "water lost",
    "Water that evaporates or splashes away must be made up, most in warm and windy weather.",
    "NOT(weather_known)",
  ),
];

export const handOverOfBasin: readonly PlacedLine<HandOverSection>[] = [
  bullet("run", "Full means: water {basin_freeboard|up} below the rim, with the pump off."),
  bullet(
    "normal",
    "In warm weather about {loss_about|0} a day evaporate or splash away; windy days take more.",
    "AND(weather_known,loss_a_day>=1[gal])",
  ),
  bullet(
    "normal",
    "The level in the vault falls by about {basin_falls_by} when the pump starts, and comes back when it stops.",
  ),
  bullet(
    "normal",
    "Haze and some foam in the first weeks, while dust washes out of the stone; rinse, do not add chemicals.",
  ),
  bullet("normal", "In heavy rain, water runs over at {overflow_said}: keep that way clear."),
];
