import { test } from "vitest";
import { sightCases } from "./cases/sight.js";
import { holds } from "./run.js";

test.each(sightCases)("$verdict: $what", holds);
