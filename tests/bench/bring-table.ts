import { createHash } from "node:crypto";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { appRouter } from "../../electron/api/router.ts";
import type { GroupOfMarks } from "../../electron/domain/reference-table/table.ts";
import { createCalculator } from "../../electron/host/calculator.ts";
import { testClock, testDesk } from "../door/desk.ts";
import { group, invented, tableOf } from "../unit/reference/making-table.ts";

/** rest: nothing is done. write: a short transaction, the making of a day. */
type Step = "rest" | "write" | "bring" | Transaction;
type Transaction = "add" | "replace" | "remove";

/** For how long at most the door's own thread answers nobody while a large table is read, added, replaced and removed. */
export interface BringTableBench {
  readonly bundles: number;
  readonly groups: number;
  readonly bytes: number;
  /** Longest pauses in ms: of the thread at rest, and in each step. The least of three runs each. */
  readonly pauses: Readonly<Record<Step, number>>;
  /** Time of the processor in what the door's own thread does alone (ms), least of three: what other programs don't add to. */
  readonly processor: Readonly<Record<Transaction, number>>;
  /** The same of a table that is read in the door's own thread (ms). */
  readonly bringHere: number;
}

const [bundles, groups, rounds] = [20_000, 3_000, 3];

function hashes(salt: string): string[] {
  return Array.from({ length: bundles }, (_none, index) =>
    createHash("sha256").update(`${salt} ${index}`).digest("hex"),
  );
}

/** Many groups of push-ups: by rules that differ, of all categories and ages. */
function manyGroups(): GroupOfMarks[] {
  const ages = [
    "15 to 19",
    "20 to 24",
    "25 to 29",
    "30 to 34",
    "35 to 39",
    "40 to 44",
    "45 to 49",
    "50 to 54",
    "all",
  ];
  const kinds = (["women", "men", "open", "unknown", "all"] as const).flatMap((category) =>
    ages.map((ageBand) => ({ category, ageBand })),
  );
  return Array.from({ length: groups }, (_none, index) => ({
    ...group,
    ...(kinds[index % kinds.length] ?? { category: "all" }),
    fingerprint: `${group.fingerprint} other=${Math.floor(index / kinds.length)}`,
  }));
}

/** Returns the longest time that a timer of one ms came too late while `work` ran (ms). */
async function longestPause(work: () => Promise<unknown>): Promise<number> {
  let [last, longest] = [performance.now(), 0];
  const timer = setInterval(() => {
    const now = performance.now();
    longest = Math.max(longest, now - last);
    last = now;
  }, 1);
  await new Promise((resolve) => setTimeout(resolve, 5));
  last = performance.now();
  longest = 0;
  await work();
  await new Promise((resolve) => setTimeout(resolve, 5));
  clearInterval(timer);
  return longest;
}

function streamOf(bytes: Uint8Array): Blob {
  return new Blob([new Uint8Array(bytes)]).stream() as unknown as Blob;
}

export async function bringTableBench(): Promise<BringTableBench> {
  const key = invented();
  const first = tableOf({ bundles: hashes("first"), groups: manyGroups() }, key);
  const second = tableOf({ bundles: hashes("second"), groups: manyGroups(), made: "2026-11-10" }, key);
  const pauses = {
    rest: Infinity,
    write: Infinity,
    bring: Infinity,
    add: Infinity,
    replace: Infinity,
    remove: Infinity,
  };
  const processor = { add: Infinity, replace: Infinity, remove: Infinity };
  let bringHere = Infinity;
  const calculator = createCalculator();
  try {
    for (let round = 0; round < rounds; round += 1) {
      const folder = mkdtempSync(join(tmpdir(), "table-bench-"));
      const { desk } = testDesk(join(folder, "store.sqlite"), testClock(), { calculator });
      const alone = testDesk();
      try {
        const { reference, day } = appRouter.createCaller({ who: "organiser", station: null, desk });
        const bring = async (bytes: Uint8Array) => {
          const brought = await reference.bring(streamOf(bytes));
          return "tableId" in brought ? brought.tableId : "";
        };
        const note = async (step: keyof typeof pauses, work: () => Promise<unknown>) => {
          pauses[step] = Math.min(pauses[step], await longestPause(work));
        };
        // The thread is there from the first time on.
        let tableId = await bring(first);
        await note("rest", () => new Promise((resolve) => setTimeout(resolve, 500)));
        await note("write", () => day.create({ date: "2026-11-14", title: "Autumn", sure: true }));
        await note("bring", async () => {
          tableId = await bring(first);
        });
        const noteAlone = async (step: Transaction, work: () => Promise<unknown>) => {
          await note(step, async () => {
            const begun = process.cpuUsage();
            await work();
            const { user, system } = process.cpuUsage(begun);
            processor[step] = Math.min(processor[step], (user + system) / 1000);
          });
        };
        await noteAlone("add", () => reference.addTable({ tableId }));
        tableId = await bring(second);
        await noteAlone("replace", () => reference.addTable({ tableId }));
        await noteAlone("remove", () => reference.removeTable({ id: 2 }));
        const here = () => alone.as("organiser").reference.bring(streamOf(first));
        bringHere = Math.min(bringHere, await longestPause(here));
      } finally {
        desk.close();
        alone.desk.close();
        rmSync(folder, { recursive: true });
      }
    }
  } finally {
    calculator.close();
  }
  return { bundles, groups, bytes: first.length, pauses, processor, bringHere };
}
