import { test } from "vitest";
import { layoutCases } from "./cases/layout.js";
import { holds } from "./run.js";

test.each(layoutCases)("$verdict: $what", holds);
