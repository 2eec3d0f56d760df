import { octetInputParser } from "@trpc/server/http";
import { refused, tooBig } from "../../domain/reference/refused.ts";
import type { FromElsewhere, ToRead } from "../../domain/reference-table/from-elsewhere.ts";
import { tableLimits } from "../../domain/reference-table/table.ts";
import { sentence } from "../../domain/words.ts";
import { Stopped } from "../door/calculate.ts";
import { isoDate } from "../door/calendar.ts";
import type { Desk } from "../door/desk.ts";
import { allow, router } from "../door/trpc.ts";
import { readUpload } from "../door/uploads.ts";
import { addBundle, listBundles, lookAtBundle, removeBundle } from "./bundles.ts";
import { readOrRefuse } from "./read-any.ts";
import { addTable, forgetPublisher, listTables, lookAtTable, removeTable } from "./tables.ts";

/** The largest file of either kind. */
function requireSize(bytes: number): void {
  if (bytes > tableLimits.bytes) throw tooBig(tableLimits.bytes);
}

/**
 * Reads a file from elsewhere apart from the door's own thread, where the desk has another: entries go on meanwhile.
 * @throws Refusal `bad-input`; also when another file was brought before this one was read.
 */
async function readApart(
  { calculator, now }: Pick<Desk, "calculator" | "now">,
  zip: Uint8Array,
): Promise<FromElsewhere> {
  const task = { zip, today: isoDate(now()) };
  const told = calculator === null ? readOrRefuse(task) : await calculated(calculator, task);
  if ("refused" in told) throw refused(told.refused);
  return told;
}

async function calculated(calculator: NonNullable<Desk["calculator"]>, task: ToRead) {
  try {
    return await calculator.begin({ kind: "read", ...task }, () => undefined).outcome;
  } catch (error) {
    if (error instanceof Stopped) return { refused: sentence("reference.gone") };
    throw error;
  }
}

/** Bundles and tables of other organisers to compare with: looked at, added, and removed with all effects. */
export const reference = router({
  /**
   * Uploads a bundle or a reference table (bytes, not JSON) and returns its content. Kept in memory only; a refused one
   * not at all.
   */
  bring: allow("organiser")
    .input(octetInputParser)
    .mutation(async ({ ctx: { desk }, input }) => {
      const read = await readApart(desk, await readUpload(input, requireSize));
      return read.kind === "table" ? lookAtTable(desk, read) : lookAtBundle(desk, read);
    }),
  add: addBundle,
  list: listBundles,
  remove: removeBundle,
  addTable,
  tables: listTables,
  removeTable,
  forgetPublisher,
});
