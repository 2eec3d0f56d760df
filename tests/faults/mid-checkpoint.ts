import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { isDeepStrictEqual } from "node:util";
import { openStore } from "../../electron/store/connection/open.ts";
import { StoreRefused } from "../../electron/store/connection/refused.ts";
import { bringLogIn } from "../../electron/store/keeping/guard.ts";
import { checkLog, pagesIn } from "../../electron/store/keeping/log-check.ts";
import { connectionOf } from "../store/connection.ts";
import { dump } from "../store/hall.ts";
import { makeHall } from "./hall.ts";
import { copyParts, enter, storeName } from "./images.ts";
import { chanceOf } from "./orders.ts";

export interface MidToll {
  /** Opened with every row as it was acknowledged. */
  opened: number;
  refused: Record<string, number>;
  readonly wrong: string[];
}

/** The files at both ends of one checkpoint, and what was acknowledged. */
interface Checkpoint {
  readonly before: string;
  readonly after: string;
  readonly rows: ReadonlyMap<string, unknown[]>;
}

/**
 * Stores as a program leaves them that ends in the middle of a checkpoint: the seal is written, the log is still there,
 * and some of its pages have reached the file (in a power cut any of them, and one in part). `bit`: one bit of the file
 * is flipped besides. Nothing may open with other rows than were acknowledged, and without the bit nothing be refused.
 */
export function cutInCheckpoint(times: number, seed: number, bit: boolean): MidToll {
  const chance = chanceOf(seed);
  const toll: MidToll = { opened: 0, refused: {}, wrong: [] };
  const root = mkdtempSync(join(tmpdir(), "tapeline-mid-"));
  const folder = mkdtempSync(join(root, "cut-"));
  try {
    const checkpoints = takeCheckpoints(root);
    for (let index = 0; index < times; index += 1) {
      const checkpoint = checkpoints[index % checkpoints.length];
      if (checkpoint === undefined) continue;
      const how = cut(checkpoint, folder, chance) + (bit ? flip(join(folder, storeName), chance) : "");
      judge(join(folder, storeName), checkpoint, how, toll, bit);
    }
    return toll;
  } finally {
    rmSync(root, { recursive: true, force: true });
  }
}

function takeCheckpoints(root: string): Checkpoint[] {
  const place = mkdtempSync(join(root, "store-"));
  const store = openStore({ file: join(place, storeName) });
  const image = () => {
    const to = mkdtempSync(join(root, "image-"));
    copyParts(place, to);
    return to;
  };
  makeHall(store, 40);
  const taken: Checkpoint[] = [];
  for (let index = 0; index < 100; index += 1) {
    enter(store, index);
    if (index % 10 !== 9) continue;
    const [before, rows] = [image(), dump(store.db)];
    bringLogIn(connectionOf(store.db));
    taken.push({ before, after: image(), rows });
  }
  store.close();
  return taken;
}

/** Log and tally of before, the seal of after, and the file in between. */
function cut({ before, after }: Checkpoint, folder: string, chance: () => number): string {
  copyParts(before, folder, ["", "-wal", "-tally"]);
  copyParts(after, folder, ["-seal"]);
  const file = join(folder, storeName);
  const log = checkLog(`${file}-wal`);
  const { pages } = pagesIn(log, log.committed);
  const bytes = Buffer.alloc(Math.max(...[before, after].map((each) => sizeOf(join(each, storeName)))));
  readFileSync(file).copy(bytes);
  const share = chance();
  let [reached, end] = [0, sizeOf(file)];
  for (const [number, page] of pages) {
    if (chance() > share) continue;
    // The last one in part, as a power cut may leave it.
    const length = reached === 3 ? log.pageBytes / 2 : log.pageBytes;
    const from = (number - 1) * log.pageBytes;
    page.copy(bytes, from, 0, length);
    end = Math.max(end, from + length);
    reached += 1;
  }
  writeFileSync(file, bytes.subarray(0, end));
  return `${reached} of ${pages.size} pages in the file`;
}

function sizeOf(file: string): number {
  return existsSync(file) ? readFileSync(file).length : 0;
}

function flip(file: string, chance: () => number): string {
  const bytes = readFileSync(file);
  const bit = Math.floor(chance() * bytes.length * 8);
  bytes.writeUInt8(bytes.readUInt8(bit >> 3) ^ (1 << (bit & 7)), bit >> 3);
  writeFileSync(file, bytes);
  return `, bit ${bit} flipped`;
}

function judge(file: string, { rows }: Checkpoint, how: string, toll: MidToll, bit: boolean): void {
  try {
    const store = openStore({ file });
    if (isDeepStrictEqual(dump(store.db), rows)) toll.opened += 1;
    else toll.wrong.push(`${how}: opened with other rows than were acknowledged`);
    store.close();
  } catch (error) {
    const reason = error instanceof StoreRefused ? error.reason : null;
    if (reason !== null) toll.refused[reason] = (toll.refused[reason] ?? 0) + 1;
    if (reason === null || !bit) toll.wrong.push(`${how}: ${String(error)}`);
  }
}
