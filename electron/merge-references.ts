/**
 * `npm run table -- FOLDER --out FILE.zip`: merges what many halls sent into one signed table; with FILE.csv (also as
 * `npm run percentiles` and `npm run reference`) into a sheet of percentiles. Ends with 0 when everything was taken, 3
 * when some was kept back, 2 when there was nothing to merge, 1 when something failed.
 */
import { enableCompileCache } from "node:module";
import { fileURLToPath } from "node:url";

// What Node made of the program's text is kept from run to run: a third of the start. Where it can't be kept, it isn't.
enableCompileCache(fileURLToPath(new URL("../node_modules/.cache/compiled", import.meta.url)));
const [{ runCommand }, { ensureBuild }] = await Promise.all([
  import("./reference/command.ts"),
  import("./runtime/build.ts"),
]);
process.exitCode = await runCommand(process.argv.slice(2), ensureBuild);
