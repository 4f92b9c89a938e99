import { test } from "vitest";
import { hiddenCases } from "./cases/hidden.js";
import { holds } from "./run.js";

test.each(hiddenCases)("$verdict: $what", holds);
