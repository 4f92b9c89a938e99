import { recalculateInGnumeric } from "./gnumeric.js";
import { testStored } from "./stored-demos.js";

testStored("Gnumeric", recalculateInGnumeric);
