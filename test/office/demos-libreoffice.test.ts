import { recalculate } from "./soffice.js";
import { testStored } from "./stored-demos.js";

testStored("LibreOffice", recalculate);
