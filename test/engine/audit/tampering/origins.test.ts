import { test } from "vitest";
import { originCases } from "./cases/origins.js";
import { holds } from "./run.js";

test.each(originCases)("$verdict: $what", holds);
