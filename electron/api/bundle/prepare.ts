import { drawSeed, type Seed, seededChance } from "../../domain/privacy/chance.ts";
import { plainRule } from "../../domain/privacy/plain-rule.ts";
import { publish, summarise } from "../../domain/privacy/publish.ts";
import { quarterOf } from "../../domain/privacy/quasi.ts";
import { leastK } from "../../domain/privacy/rule.ts";
import type { Database } from "../../store/database.ts";
import { type Day, dayProtocols } from "../../store/days.ts";
import type { Store } from "../../store/store.ts";
import type { Desk } from "../desk.ts";
import { candidatesOf } from "./candidates.ts";
import { type BundleFile, bundleFile } from "./package/bundle-file.ts";
import type { Contents } from "./package/contents.ts";

/** The rule that decides; another one can take its place here. */
const rule = plainRule;
/** Within the sport. */
const k = leastK;

/** What would leave, and the file that would carry it. */
export interface Prepared {
  readonly contents: Contents;
  /** How many different athletes the rows belong to; not in the file. */
  readonly athletes: number;
  readonly file: BundleFile;
}

/** Where the order and the ids of a day's bundle come from, until a bundle with them has left. */
interface Draw {
  readonly seed: Seed;
  left: string | null;
}

/** In memory only: after a restart everything is drawn anew, and looked at anew. */
const draws = new WeakMap<Store, Map<number, Draw>>();

function drawOf({ store, random }: Desk, dayId: number, afresh = false): Draw {
  const known = draws.get(store) ?? new Map<number, Draw>();
  draws.set(store, known);
  const found = known.get(dayId);
  if (found !== undefined && !afresh) return found;
  const draw: Draw = { seed: drawSeed(random), left: null };
  known.set(dayId, draw);
  return draw;
}

/**
 * Makes the bundle of a day in memory. Until something changes, every call gives the same bytes, so that what is written
 * is what was looked at. Once a bundle has left, one with other rows gets a draw of its own: two files of one day must
 * not be laid side by side by their ids.
 */
export function prepare(desk: Desk, db: Database, day: Day): Prepared {
  const draw = drawOf(desk, day.id);
  const prepared = prepareWith(draw.seed, desk, db, day);
  if (draw.left === null || draw.left === prepared.file.sha256) return prepared;
  return prepareWith(drawOf(desk, day.id, true).seed, desk, db, day);
}

/** Remembers that this file leaves. */
export function markAsLeft(desk: Desk, dayId: number, sha256: string): void {
  drawOf(desk, dayId).left = sha256;
}

function prepareWith(seed: Seed, desk: Desk, db: Database, day: Day): Prepared {
  const { kept, suppressed, kReached } = rule.protect(candidatesOf(db, day), { k });
  const contents = {
    quarter: quarterOf(day.date),
    demo: desk.kind === "demo",
    protocols: dayProtocols(db, day.id),
    rows: publish(kept, seededChance(seed)),
    summaries: summarise(kept),
    k,
    kReached,
    ruleName: rule.name,
    suppressed,
  };
  const athletes = new Set(kept.map(({ athlete }) => athlete)).size;
  return { contents, athletes, file: bundleFile(contents) };
}
