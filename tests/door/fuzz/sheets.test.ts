import { readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { findDamage, findWrongMark } from "../../../electron/store/connection/checks.ts";
import { ordinaryMs } from "../../ordinary.ts";
import { dump } from "../../store/hall.ts";
import { seeded } from "../desk.ts";
import { demoFolder } from "../rehearsing.ts";
import { type Answer, ask, bring } from "./ask.ts";
import { giants } from "./giants.ts";
import { type FuzzHall, fuzzHall } from "./hall.ts";
import { spoilers } from "./spoil-sheet.ts";

const kinds = ["roster", "past", "results"] as const;
type Kind = (typeof kinds)[number];
const sheets = Object.fromEntries(
  kinds.map((kind) => [kind, new Uint8Array(readFileSync(join(demoFolder, `${kind}.csv`)))]),
) as Record<Kind, Uint8Array>;

let hall: FuzzHall;
beforeAll(async () => {
  hall = await fuzzHall();
  for (const kind of kinds) {
    const { result } = (await through(sheets[kind], kind)).taken;
    expect(result).toMatchObject({ kind });
  }
});
afterAll(() => hall.close());

const who = "organiser";

/** Brings a sheet, looks at it, and takes it in, as the screen does. */
async function through(sheet: Uint8Array, kind: Kind): Promise<{ looked: Answer; taken: Answer }> {
  const brought = await bring(hall, "intake.upload", sheet, who);
  if (brought.result === undefined) return { looked: brought, taken: brought };
  const input = { ...(brought.result as { uploadId: string }), kind, mapping: {} };
  const json = JSON.stringify(input);
  const looked = await ask(hall, { path: "intake.read", type: "subscription", json, who });
  const taken = await ask(hall, { path: "intake.take", type: "mutation", json, who });
  const { uploadId } = input;
  const back = JSON.stringify({ uploadId });
  const kept = await ask(hall, { path: "intake.keptBackSheet", type: "query", json: back, who });
  expect(kept.wrong).toBeUndefined();
  return { looked, taken };
}

const rows = () => [...dump(hall.desk.store.db)];

/** Sentences or rows, and never half of a sheet. */
function expectSound({ looked, taken }: { looked: Answer; taken: Answer }, before: unknown): void {
  expect([looked.wrong, taken.wrong, ...hall.faults.splice(0)]).toEqual([undefined, undefined]);
  expect(JSON.stringify(looked.result ?? looked.key)).toMatch(/"stage":"(?:preview|refused)"|^"sheets\./);
  if (taken.result === undefined) expect(rows()).toEqual(before);
  const { db } = hall.desk.store;
  expect(findDamage(db) ?? findWrongMark(db, 100_000)).toBeNull();
}

/** More of them by `SHEETS=50 npx vitest …`. */
const times = Number(process.env.SHEETS ?? 1);

test.each(Object.entries(spoilers))(
  "a sheet with %s is read or refused with a sentence",
  async (_how, spoil) => {
    const chance = seeded(20_261_114);
    for (let index = 0; index < times; index += 1) {
      for (const kind of kinds) {
        const before = rows();
        expectSound(await through(spoil(sheets[kind], chance), kind), before);
      }
    }
  },
);

test.each(giants)("$what costs little", async ({ kind, make }) => {
  const sheet = make();
  const before = rows();
  const memory = process.memoryUsage().rss;
  const took = await ordinaryMs(async () => expectSound(await through(sheet, kind), before));
  expect(took).toBeLessThan(5_000);
  expect(process.memoryUsage().rss - memory).toBeLessThan(800 * 1024 * 1024);
});
