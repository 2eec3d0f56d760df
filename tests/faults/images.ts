import { randomUUID } from "node:crypto";
import { copyFileSync, existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { openStore } from "../../electron/store/connection/open.ts";
import type { Store } from "../../electron/store/connection/store.ts";
import { bringLogIn } from "../../electron/store/keeping/guard.ts";
import { recordAttempt } from "../../electron/store/tables/record.ts";
import { cm } from "../lengths.ts";
import { connectionOf } from "../store/connection.ts";
import { dump } from "../store/hall.ts";
import { makeHall } from "./hall.ts";

/** A store's files as they lay there at one moment, and every row that had been acknowledged by then. */
export interface Image {
  readonly folder: string;
  readonly rows: ReadonlyMap<string, unknown[]>;
}

export const storeName = "tapeline.sqlite";
export const parts = ["", "-wal", "-seal", "-tally"] as const;
export type Part = (typeof parts)[number];
/** By its name one of a hall's backups, and nothing in it: it is a trace and no way back. */
const someBackup = "tapeline-3f09ab12-000001-2026-11-14-0905.backup";
const athletes = 40;

/** Takes images all through the life of one store: open with a log, sealed, closed, opened again. */
export function takeImages(): { images: Image[]; drop: () => void } {
  const root = mkdtempSync(join(tmpdir(), "tapeline-images-"));
  const file = join(root, storeName);
  const images: Image[] = [];
  let store = openStore({ file });
  const take = (rows = dump(store.db)) => images.push({ folder: imageOf(root, images.length), rows });
  makeHall(store, athletes);
  for (let index = 0; index < athletes * 3; index += 1) {
    enter(store, index);
    if (index % 2 === 0) take();
    if (index % 29 === 28) {
      bringLogIn(connectionOf(store.db));
      take();
    }
    if (index % 41 === 40) {
      const rows = dump(store.db);
      store.close();
      take(rows);
      store = openStore({ file });
      take();
    }
  }
  store.close();
  return { images, drop: () => rmSync(root, { recursive: true, force: true }) };
}

/** One attempt of somebody, acknowledged when it returns. */
export function enter(store: Store, index: number): void {
  const kinds = [
    { test: "push-up", variant: "full", seen: { how: "tally", reps: 5 + (index % 30), offAtEnd: 0 } },
    { test: "vertical", variant: "", seen: { standingReach: cm(210), touchReach: cm(225 + index / 2) } },
    { test: "core", variant: "", seen: { held: 20_000 + index * 1000 } },
  ] as const;
  const kind = kinds[Math.floor(index / athletes) % 3] ?? kinds[0];
  const common = { enteredBy: "QA", note: "", source: "station", replaces: null } as const;
  const attempt = { ...common, ...kind, id: randomUUID(), at: "2026-11-14T09:00:00.000Z" };
  store.write(["attempts"], (db) => recordAttempt(db, 1, { ...attempt, athleteId: 1 + (index % athletes) }));
}

function imageOf(root: string, number: number): string {
  const folder = join(root, `image-${number}`);
  mkdirSync(join(folder, "backups"), { recursive: true });
  copyParts(root, folder);
  writeFileSync(join(folder, "backups", someBackup), "");
  return folder;
}

/** Copies a store's files, and takes away what is not among them. */
export function copyParts(from: string, to: string, which: readonly Part[] = parts): void {
  for (const part of which) {
    const name = `${storeName}${part}`;
    rmSync(join(to, name), { force: true });
    if (existsSync(join(from, name))) copyFileSync(join(from, name), join(to, name));
  }
}
