import { Project, Workspace } from "epanet-js";

const workspace = new Workspace();
await workspace.loadModule();

// Property numbers of the EPANET toolkit: EN_HEAD, EN_FLOW, EN_HEADLOSS, EN_RELATIVEERROR.
const headProperty = 10;
const flowProperty = 8;
const headLossProperty = 10;
const relativeError = 1;

/** Reads results by the identifiers that the input text gave to nodes and links. */
export interface EpanetResults {
  head(node: string): number;
  flow(link: string): number;
  headLoss(link: string): number;
}

/**
 * Runs the hydraulics of an EPANET input text at hour 0 and hands its results to `read`, in the
 * text's own units. Throws where EPANET reports an error or a solution that did not settle.
 */
export function runEpanet<T>(input: string, read: (results: EpanetResults) => T): T {
  const project = new Project(workspace);
  workspace.writeFile("network.inp", input);
  project.open("network.inp", "network.rpt", "network.out");
  try {
    project.openH();
    project.initH(0);
    project.runH();
    const error = project.getStatistic(relativeError);
    if (!(error < 1e-4)) {
      throw new Error(
        `EPANET stopped at a relative flow change of ${error}; it must be below 1e-4`,
      );
    }
    return read({
      head: (node) => project.getNodeValue(project.getNodeIndex(node), headProperty),
      flow: (link) => project.getLinkValue(project.getLinkIndex(link), flowProperty),
      headLoss: (link) => project.getLinkValue(project.getLinkIndex(link), headLossProperty),
    });
  } finally {
    project.close();
  }
}
