import { calc, flow, head, hourlyFlow, precise, speed, table, text } from "../../../engine/template/index.js";
import { pipeSizes } from "../../tables/pipe-bores.js";
import { plus } from "../added.js";
import type { Whole } from "../brought.js";

const pass = (from: string, label: string) =>
  calc(flow, `IF(${from}>0,PUSH_PASS(${from},friction,local,slope,rest),0)`, label, { working: true });

/** The argument for a bigger pipe, in figures: what each stocked size loses and lets through. */
export const sizeComparison = ({ added }: Pick<Whole, "added">) =>
  table(
    "size_comparison",
    "Main pipe sizes compared",
    {
      rows: pipeSizes.rows,
      beside: "pipe_sizes",
      note: "Loss and speed at design flow. Largest flow: what the chosen pump pushes at full speed through this main, with these fittings, to the highest outlet; lines and valves left out.",
    },
    {
      main_of: calc(text, "size", "Main pipe size"),
      local: calc(
        precise,
        `LOCAL_COEFFICIENT(MAX(0,main_fixed_loss+turbulent_factor*main_multiples),bore)${plus(added("main loss"))}`,
        "Fittings coefficient",
        { working: true, decimals: 7 },
      ),
      friction: calc(precise, "FRICTION_COEFFICIENT(main_total_length,bore,smoothness)", "Friction coefficient", {
        working: true,
        decimals: 7,
      }),
      speed: calc(speed, "PIPE_SPEED(total_design_flow,bore)", "Speed"),
      head_lost: calc(head, "LOSS_AT(total_design_flow,friction,local)", "Main loss", {
        strong: true,
      }),
      head_total: calc(head, "highest_head_required+head_lost", "TDH"),
      points_past: calc(
        precise,
        "SUMPRODUCT((pump_points.head-highest_outlet-LOSS_AT(pump_points.flow,friction,local)>0)*pump_points.used)",
        "Curve points passed",
        { working: true, decimals: 0 },
      ),
      piece: calc(precise, "MAX(1,MIN(points_past,pump_point_count-1))", "Curve segment", {
        working: true,
        decimals: 0,
      }),
      slope: calc(precise, "INDEX(pump_points.slope,piece)", "Segment slope", { working: true }),
      rest: calc(
        head,
        "MAX(0[ft],CARRIED_BACK(INDEX(pump_points.flow,piece),INDEX(pump_points.head,piece),slope)-highest_outlet)",
        "Head left at zero flow",
        { working: true, zero: "none" },
      ),
      push_start: calc(
        flow,
        "IF(AND(rest>0,slope<0),1[gal/min]/MAX(-slope/(rest/1[ft]),(friction/(rest/1[ft]))^0.54,(local/(rest/1[ft]))^0.5),0)",
        "Upper bound of flow",
        { working: true },
      ),
      push_first: pass("push_start", "First pass"),
      push_second: pass("push_first", "Second pass"),
      push_third: pass("push_second", "Third pass"),
      push_fourth: pass("push_third", "Fourth pass"),
      most_flow: calc(
        hourlyFlow,
        "IF(push_fourth>0,PUSH_PASS(push_fourth,friction,local,slope,rest),0)",
        "Largest flow",
        { strong: true, zero: "none" },
      ),
      most_speed: calc(speed, "PIPE_SPEED(most_flow,bore)", "Speed at largest flow"),
      in_words: calc(
        text,
        'IF(pump_point_count<2,"choose a pump first",SIZE_VERDICT(points_past,most_flow,total_design_flow,speed,main_speed_limit))',
        "Verdict",
      ),
    },
  );
