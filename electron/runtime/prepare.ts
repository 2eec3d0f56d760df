import { ensureVirtualDisplay } from "./display.ts";
import { type ElectronRuntime, findRuntime } from "./find.ts";
import type { PrintLine } from "./host.ts";
import { ensureLibraries } from "./libraries.ts";

/**
 * Prepares all that a start needs of this computer: the runtime, the system's libraries, and a program for a virtual
 * display where there is no real one. Processes that ask at the same time take turns, and later ones find it done.
 */
export async function prepareRuntime(log: PrintLine): Promise<ElectronRuntime> {
  const runtime = await findRuntime(log);
  await ensureLibraries(runtime.executablePath, log);
  await ensureVirtualDisplay(log);
  return runtime;
}
