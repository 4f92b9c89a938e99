import { spawn } from "node:child_process";
import { access, constants, mkdir, writeFile } from "node:fs/promises";
import { delimiter, join } from "node:path";
import { pathToFileURL } from "node:url";
import { RillbookError } from "../errors.js";

/** What LibreOffice's program is called, by what installs it. */
const programs = ["soffice", "libreoffice", "soffice.exe"] as const;

/** Long enough for a large bid on a slow machine. */
const patienceMs = 180_000;

/** Where LibreOffice's program is; undefined where it is on no folder of the PATH. */
export async function officeProgram(path = process.env.PATH ?? ""): Promise<string | undefined> {
  for (const folder of path.split(delimiter).filter(Boolean)) {
    for (const name of programs) {
      const found = join(folder, name);
      if (await access(found, constants.X_OK).then(yes, no)) return found;
    }
  }
  return undefined;
}

const yes = () => true;
const no = () => false;

/**
 * A profile of its own calculates every workbook anew as it loads: what prints is what the cells say. It says that
 * it has known every version: in one that is new to a profile LibreOffice first tries out how it draws, for a second.
 */
const settings = `<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry" xmlns:xs="http://www.w3.org/2001/XMLSchema" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
<item oor:path="/org.openoffice.Setup/Product"><prop oor:name="ooSetupLastVersion" oor:op="fuse"><value>99.9</value></prop></item>
</oor:items>
`;

/**
 * Has LibreOffice turn workbooks into PDF files of the same names, in a folder.
 * Throws RillbookError where it fails or takes too long.
 */
export async function asPdf(
  program: string,
  workbooks: readonly string[],
  folder: string,
): Promise<void> {
  const profile = join(folder, "profile");
  await mkdir(join(profile, "user"), { recursive: true });
  await writeFile(join(profile, "user", "registrymodifications.xcu"), settings);
  const args = [
    "--headless",
    `-env:UserInstallation=${pathToFileURL(profile).href}`,
    ...["--convert-to", "pdf", "--outdir", folder],
    ...workbooks,
  ];
  const told = await ran(program, args);
  if (told !== undefined) {
    throw new RillbookError(
      "printing-failed",
      `LibreOffice (${program}) did not print: ${told}. Nothing was written. Open the workbook there and print its pages by hand, or try again.`,
      3,
    );
  }
}

/** Returns what went wrong, in words; nothing where it ended well. */
function ran(program: string, args: readonly string[]): Promise<string | undefined> {
  return new Promise((resolve) => {
    // a group of its own, so that what it starts ends with it
    const child = spawn(program, args, { stdio: ["ignore", "ignore", "pipe"], detached: true });
    let complaint = "";
    child.stderr.on("data", (text: Buffer) => {
      complaint = (complaint + text.toString("utf8")).slice(-300);
    });
    const timer = setTimeout(() => {
      endGroup(child.pid);
      resolve(`it took over ${patienceMs / 1000} seconds`);
    }, patienceMs);
    child.on("error", (error) => {
      clearTimeout(timer);
      resolve(error.message);
    });
    child.on("close", (status) => {
      clearTimeout(timer);
      resolve(
        status === 0 ? undefined : `status ${status}, ${complaint.trim() || "no reason told"}`,
      );
    });
  });
}

function endGroup(pid: number | undefined): void {
  if (pid === undefined) return;
  try {
    process.kill(-pid, "SIGKILL");
  } catch {
    // it has ended by itself
  }
}
