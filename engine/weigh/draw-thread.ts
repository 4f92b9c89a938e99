import { workerData } from "piscina";
import { Drawer, type DrawTask } from "./draws.js";

/** A worker thread: draws one block after another. */
const drawer = new Drawer(workerData as DrawTask);

export default (place: number): Float64Array => drawer.block(place);
