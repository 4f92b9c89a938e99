import { test } from "vitest";
import { moreSightCases } from "./cases/more-sight.js";
import { holds } from "./run.js";

test.each(moreSightCases)("$verdict: $what", holds);
