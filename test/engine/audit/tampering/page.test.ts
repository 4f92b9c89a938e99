import { test } from "vitest";
import { pageCases } from "./cases/page.js";
import { holds } from "./run.js";

test.each(pageCases)("$verdict: $what", holds);
