import { test } from "vitest";
import { cellCases } from "./cases/cells.js";
import { holds } from "./run.js";

test.each(cellCases)("$verdict: $what", holds);
