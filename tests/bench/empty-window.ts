import { cp, link, mkdir, readdir, writeFile } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import type { ElectronRuntime } from "../../electron/runtime/find.ts";

/** What the main process of the least program does: one window with a page of one line. */
const program = `const { app, BrowserWindow } = require("electron");
require(process.env.TAPELINE_TEST_SCRIPT);
app.whenReady().then(() => {
  const window = new BrowserWindow({ width: 1280, height: 800, show: false, webPreferences: { sandbox: true } });
  window.once("ready-to-show", () => window.show());
  window.loadURL('data:text/html,<html data-ready="true"><body>Empty</body></html>');
});
`;

/**
 * Makes a program with nothing but an empty window, on the same runtime, in an empty folder on the runtime's disk: its files
 * are linked, and what it starts is put in the place of this project. Returns what starts it.
 */
export async function emptyProgram(runtime: ElectronRuntime, folder: string): Promise<string> {
  const from = dirname(runtime.executablePath);
  for (const entry of await readdir(from, { withFileTypes: true })) {
    if (entry.name === "resources") continue;
    const to = join(folder, entry.name);
    if (entry.isDirectory()) await cp(join(from, entry.name), to, { recursive: true });
    else await link(join(from, entry.name), to);
  }
  const app = join(folder, "resources", "app");
  await mkdir(app, { recursive: true });
  await writeFile(join(app, "package.json"), '{ "name": "empty", "main": "main.cjs" }');
  await writeFile(join(app, "main.cjs"), program);
  return join(folder, basename(runtime.executablePath));
}
