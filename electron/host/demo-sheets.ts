import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { DemoSheets } from "../api/door/desk.ts";

/** Returns a reader of the demo's sheets in `folder`, which reads them at each call. */
export function demoSheetsIn(folder: string): () => DemoSheets {
  const read = (name: string) => new Uint8Array(readFileSync(join(folder, name)));
  return () => ({ roster: read("roster.csv"), results: read("results.csv"), past: read("past.csv") });
}
