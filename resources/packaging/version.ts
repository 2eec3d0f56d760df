import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { projectFolder } from "../../electron/runtime/host.ts";

/** The program's own version, as package.json says. */
export async function ownVersion(): Promise<string> {
  const text = await readFile(join(projectFolder, "package.json"), "utf8");
  return (JSON.parse(text) as { version: string }).version;
}
