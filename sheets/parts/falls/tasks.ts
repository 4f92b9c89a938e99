import { production, withMachine } from "../rates.js";
import { type Task, task } from "../task.js";

/** Their stone is brought apart, so the way slows that alone. */
const moved = ["by_access"] as const;

/** A fall costs its set-up, and then by its width and its drop; what stands behind its liner comes before it. */
export const fallTasks: readonly Task[] = [
  task(
    "Set out falls, build their base",
    "berms",
    "falls_built",
    withMachine(
      production("fall-set-up", "Set out a fall, build its base", "each", 0.3),
      0.2,
      production("fall-set-up-hand", "Set out a fall, build its base, by hand", "each", 0.25),
    ),
    moved,
  ),
  task(
    "Build back walls of the falls",
    "berms",
    "back_wall",
    withMachine(
      production("back-wall", "Build the back wall of a fall", "ft²", 3),
      0.2,
      production("back-wall-hand", "Build the back wall of a fall, stone carried", "ft²", 2.2),
    ),
    moved,
  ),
  task(
    "Bring stone to the falls",
    "falls",
    "built_stone",
    withMachine(
      production("stone-brought", "Bring lips and face stone to a fall", "ton", 1.2),
      0.4,
      production("stone-brought-hand", "Barrow and carry lips and face stone to a fall", "ton", 0.6),
    ),
    ["by_access", "by_haul"],
  ),
  task(
    "Choose and set the lips",
    "falls",
    "lip_length",
    withMachine(
      production("lip-set", "Choose, set, level and foam a lip", "ft", 0.8),
      0.2,
      production("lip-set-hand", "Choose, set, level and foam a lip by hand", "ft", 0.6),
    ),
    moved,
  ),
  task(
    "Build the faces of the falls",
    "falls",
    "fall_face",
    withMachine(
      production("fall-face", "Build a fall's face, foam and fit it", "ft²", 1.2),
      0.2,
      production("fall-face-hand", "Build a fall's face by hand, foam and fit it", "ft²", 0.8),
    ),
    moved,
  ),
];
