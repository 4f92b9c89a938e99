import { test } from "vitest";
import { formatCases } from "./cases/format.js";
import { holds } from "./run.js";

test.each(formatCases)("$verdict: $what", holds);
