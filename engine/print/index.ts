export { type Paper, printPapers } from "./print.js";
