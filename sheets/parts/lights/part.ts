import { bullet } from "../../plan/page-line.js";
import { counted } from "../../vocabulary/counted.js";
import { part } from "../part.js";
import { production } from "../rates.js";
import { task } from "../task.js";
import { lights as lightsBlock, lightsSaid } from "./lights.js";

export const lights = part("Lights", "Lights under water on low voltage.", {
  blocks: { Electric: [lightsBlock], Wording: [lightsSaid] },
  adds: { "circuit current": "lights_current" },
  takeoff: [
    { what: "lights", code: "lights", wanted: "lights_wanted", unit: "each", placeholder: 100, said: "light_said" },
    {
      what: "cable to the lights",
      code: "light-cable",
      wanted: "lights_wanted*cable_a_light",
      unit: "ft",
      waste: 0.1,
      said: '"two conductors of "&light_cable',
    },
    {
      what: "transformers for the lights",
      code: "transformer",
      wanted: "transformers_needed",
      unit: "each",
      placeholder: 200,
      said: "transformer_said",
    },
  ],
  tasks: [
    task(
      "Fit lights with their cable",
      "lights",
      "lights_wanted",
      production("light-fitted", "Fit a light with its cable", "each", 1),
    ),
  ],
  crew: [
    bullet(
      "step: lights",
      `Lights: {${counted("lights_wanted", "light", "lights")}}, together {lights_load|0}, on {${counted("transformers_needed", "transformer", "transformers")}} of {transformer_rating|0}.`,
      "lights_wanted>0",
    ),
    bullet(
      "step: test run",
      "Then, before stone covers it: the lights' cable, {light_cable}, {cable_a_light|0} a light, along the banks. No trench of its own is planned; where it leaves the stone, as deep as the local code asks.",
      "lights_wanted>0",
    ),
    bullet(
      "step: lights",
      "Places: {lights_first}, turned away from where people look from; mark them in the sketch. Sealed splices stay dry: above the highest water, under loose stone.",
      "lights_wanted>0",
    ),
  ],
  proposal: [
    bullet("lights", `{${counted("lights_wanted", "underwater light", "underwater lights")}}.`, "lights_wanted>0"),
  ],
  handOver: [
    bullet(
      "run",
      `Lights: {${counted("lights_wanted", "light", "lights")}} of {light_voltage|0} on {${counted("transformers_needed", "transformer", "transformers")}}, which is at:\u00a0____________ Switched by:\u00a0____________`,
      "lights_wanted>0",
    ),
  ],
  told: ["lights_wanted"],
});
