/** `npm run demo`: writes the sheets of the demonstration beside this file. */
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { makeSheets } from "./sheets.ts";

for (const [kind, text] of Object.entries(makeSheets())) {
  writeFileSync(join(import.meta.dirname, `${kind}.csv`), text);
  console.log(`${kind}.csv: ${text.split("\r\n").length - 2} rows`);
}
