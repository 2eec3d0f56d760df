import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  statSync,
  truncateSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { isDeepStrictEqual } from "node:util";
import { openStore } from "../../electron/store/connection/open.ts";
import { acceptable, StoreRefused } from "../../electron/store/connection/refused.ts";
import { dump } from "../store/hall.ts";
import { copyParts, type Image, type Part, parts, storeName, takeImages } from "./images.ts";
import { chanceOf, oneOf } from "./orders.ts";

type Chance = () => number;

export interface TwiceToll {
  /** Opened, with every row that was acknowledged and no other. */
  opened: number;
  refused: Record<string, number>;
  /** What must never be, with how it was damaged. */
  readonly wrong: string[];
}

const pairs: readonly (readonly [Part, Part])[] = [
  ["-seal", ""],
  ["-seal", "-wal"],
  ["-tally", "-wal"],
];

/**
 * Damages two of a store's files at once, as one run of bad sectors, a folder that was copied in part, or an older copy
 * over a newer one does; then nothing may open with other rows than were acknowledged, or as a new hall, and what is
 * refused may not be touched.
 */
export function damagedTwice(times: number, seed: number): TwiceToll {
  const chance = chanceOf(seed);
  const toll: TwiceToll = { opened: 0, refused: {}, wrong: [] };
  const { images, drop } = takeImages();
  const folder = mkdtempSync(join(tmpdir(), "tapeline-twice-"));
  try {
    for (let index = 0; index < times; index += 1) {
      const at = 5 + Math.floor(chance() * (images.length - 5));
      const image = images[at];
      if (image === undefined) continue;
      copyParts(image.folder, folder);
      mkdirSync(join(folder, "backups"), { recursive: true });
      const older = images.slice(0, at);
      const how = (pairs[index % 3] ?? []).map((part) => harm(folder, part, older, chance));
      judge(folder, image, how.join("; "), toll);
    }
    return toll;
  } finally {
    drop();
    rmSync(folder, { recursive: true, force: true });
  }
}

function judge(folder: string, image: Image, how: string, toll: TwiceToll): void {
  const location = { file: join(folder, storeName), backups: join(image.folder, "backups") };
  const before = contentOf(folder);
  try {
    const store = openStore(location);
    const same = isDeepStrictEqual(dump(store.db), image.rows);
    store.close();
    if (same) toll.opened += 1;
    else toll.wrong.push(`${how}: opened with other rows than were acknowledged`);
  } catch (error) {
    if (!(error instanceof StoreRefused)) {
      toll.wrong.push(`${how}: neither opened nor refused: ${String(error)}`);
      return;
    }
    toll.refused[error.reason] = (toll.refused[error.reason] ?? 0) + 1;
    if (!isDeepStrictEqual(contentOf(folder), before)) toll.wrong.push(`${how}: refused, and touched`);
    if (acceptable.includes(error.reason)) accept(location.file, how, toll);
  }
}

/** What a person may accept has to open then, and to stay open. */
function accept(file: string, how: string, toll: TwiceToll): void {
  try {
    openStore({ file, accepted: true }).close();
    openStore({ file }).close();
  } catch (error) {
    toll.wrong.push(`${how}: accepted, and then: ${String(error)}`);
  }
}

function contentOf(folder: string): (Buffer | null)[] {
  const files = parts.map((part) => join(folder, `${storeName}${part}`));
  return files.map((file) => (existsSync(file) ? readFileSync(file) : null));
}

function harm(folder: string, part: Part, older: readonly Image[], chance: Chance): string {
  const file = join(folder, `${storeName}${part}`);
  const bytes = existsSync(file) && statSync(file).size > 0 ? readFileSync(file) : null;
  const name = part === "" ? "file" : part;
  // Where there is no log an older one can still be put.
  const way = bytes === null ? olderCopy : (oneOf(chance, ways) ?? olderCopy);
  return `${name} ${way({ folder, file, part, older, bytes: bytes ?? Buffer.alloc(0) }, chance)}`;
}

interface Victim {
  readonly folder: string;
  readonly file: string;
  readonly part: Part;
  readonly older: readonly Image[];
  readonly bytes: Buffer;
}

const at = (chance: Chance, length: number) => Math.floor(chance() * length);

function olderCopy({ folder, part, older }: Victim, chance: Chance): string {
  // As often from just before as from long ago.
  const image = oneOf(chance, chance() < 0.5 ? older.slice(-6) : older);
  if (image !== undefined) copyParts(image.folder, folder, [part]);
  return "an older copy";
}

const ways: readonly ((victim: Victim, chance: Chance) => string)[] = [
  ({ file, bytes }, chance) => {
    const bit = at(chance, bytes.length * 8);
    bytes.writeUInt8(bytes.readUInt8(bit >> 3) ^ (1 << (bit & 7)), bit >> 3);
    writeFileSync(file, bytes);
    return `bit ${bit} flipped`;
  },
  ({ file, bytes }, chance) => {
    for (let count = 0; count < 16; count += 1) bytes.writeUInt8(at(chance, 256), at(chance, bytes.length));
    writeFileSync(file, bytes);
    return "bytes spoilt";
  },
  ({ file, bytes }, chance) => {
    const from = at(chance, Math.ceil(bytes.length / 512)) * 512;
    bytes.fill(at(chance, 256), from, Math.min(bytes.length, from + 512 * (1 + at(chance, 8))));
    writeFileSync(file, bytes);
    return `sectors from ${from} filled`;
  },
  ({ file, bytes }) => {
    writeFileSync(file, bytes.fill(0));
    return "all zero";
  },
  ({ file, bytes }, chance) => {
    const length = at(chance, bytes.length);
    truncateSync(file, length);
    return `cut at ${length}`;
  },
  ({ file }) => {
    rmSync(file);
    return "gone";
  },
  ({ file }) => {
    truncateSync(file, 0);
    return "emptied";
  },
  olderCopy,
  olderCopy,
];
