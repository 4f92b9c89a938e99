import { homedir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

/** Models that the package brings along, beside its code. */
export const packageFolder = fileURLToPath(new URL("../../models", import.meta.url));

/**
 * Where programs keep what they can make again, for this user. Sources: XDG Base Directory
 * Specification 0.8; from memory: LOCALAPPDATA on Windows, ~/Library/Caches on macOS.
 */
export function cacheFolder(env = process.env, platform = process.platform): string {
  const home = homedir();
  const given = env.XDG_CACHE_HOME || (platform === "win32" ? env.LOCALAPPDATA : undefined);
  const usual = platform === "darwin" ? join(home, "Library", "Caches") : join(home, ".cache");
  return join(given || usual, "rillbook");
}
