import { spawn } from "node:child_process";
import { mkdir, mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { pathToFileURL } from "node:url";

/** A program that is not installed must fail a run by name, never skip it. */
export function missingProgram(program: string, debianPackage: string): Error {
  return new Error(
    `${program} is not installed; the office tests need it: install the Debian package ${debianPackage} ` +
      `(apt-get install --no-install-recommends ${debianPackage})`,
  );
}

/**
 * Runs a program to its end and returns what it printed.
 * Throws when it is missing, exits non-zero, or takes longer than the limit (then it is ended with all it started).
 */
export function runProgram(
  program: string,
  debianPackage: string,
  args: readonly string[],
  limitSeconds = 100,
): Promise<string> {
  return new Promise((resolve, reject) => {
    // A process group of its own: soffice is a script that starts the real program.
    const child = spawn(program, args, { detached: true, stdio: ["ignore", "pipe", "pipe"] });
    let printed = "";
    child.stdout.on("data", (chunk) => {
      printed += chunk;
    });
    child.stderr.on("data", (chunk) => {
      printed += chunk;
    });
    let late = false;
    const timer = setTimeout(() => {
      late = true;
      if (child.pid !== undefined) process.kill(-child.pid, "SIGKILL");
    }, limitSeconds * 1000);
    child.on("error", (error: NodeJS.ErrnoException) => {
      clearTimeout(timer);
      reject(error.code === "ENOENT" ? missingProgram(program, debianPackage) : error);
    });
    child.on("close", (code) => {
      clearTimeout(timer);
      if (late) reject(new Error(`${program} did not end within ${limitSeconds} s: ${printed}`));
      else if (code !== 0) reject(new Error(`${program} ended with status ${code}: ${printed}`));
      else resolve(printed);
    });
  });
}

// Recalculation mode 0 = always: by default LibreOffice trusts the cached values of an xlsx.
// Set-up marked as completed: otherwise the first start overwrites our macro with its own presets.
// Last version beyond any: in one that is new to a profile it first tries out how it draws, two thirds of a start's time.
const settings = (locale: string, isKnown = true) => `<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry" xmlns:xs="http://www.w3.org/2001/XMLSchema" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
<item oor:path="/org.openoffice.Setup/Office"><prop oor:name="ooSetupInstCompleted" oor:op="fuse"><value>true</value></prop></item>
${isKnown ? '<item oor:path="/org.openoffice.Setup/Product"><prop oor:name="ooSetupLastVersion" oor:op="fuse"><value>99.9</value></prop></item>' : ""}
${locale === "" ? "" : `<item oor:path="/org.openoffice.Setup/L10N"><prop oor:name="ooSetupSystemLocale" oor:op="fuse"><value>${locale}</value></prop></item>`}
</oor:items>
`;

/** The profile of a first start, for `profileFiles`: LibreOffice does in it what a start after an update does. */
export const firstStart = { "user/registrymodifications.xcu": settings("", false) };

/**
 * Runs LibreOffice without a window, in a fresh profile that recalculates every xlsx it loads.
 * `profileFiles` are further files of the profile, path to text; `locale`, such as `de-DE`, is how numbers and
 * dates are typed and shown. Returns what was printed.
 * The exit status is 0 even when a file fails to load: the caller checks what was written.
 */
export async function runSoffice(
  args: readonly string[],
  profileFiles: Readonly<Record<string, string>> = {},
  locale = "",
  limitSeconds = 100,
): Promise<string> {
  const profile = await mkdtemp(join(tmpdir(), "rillbook-office-"));
  try {
    const files = { "user/registrymodifications.xcu": settings(locale), ...profileFiles };
    for (const [path, text] of Object.entries(files)) {
      await mkdir(dirname(join(profile, path)), { recursive: true });
      await writeFile(join(profile, path), text);
    }
    const profileOption = `-env:UserInstallation=${pathToFileURL(profile).href}`;
    const options = ["--headless", "--norestore", profileOption];
    const all = [...options, ...args];
    const printed = await runProgram("soffice", "libreoffice-calc", all, limitSeconds);
    // Said at every start where no Java is installed; none is needed.
    return printed.replace(/^Warning: failed to launch javaldx.*\n?/m, "").trim();
  } finally {
    await rm(profile, { recursive: true, force: true });
  }
}
