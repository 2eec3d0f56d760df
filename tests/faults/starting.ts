import { spawnSync } from "node:child_process";
import { writeSync } from "node:fs";
import { join } from "node:path";
import { firstRow } from "../../electron/store/connection/database.ts";
import { openStore } from "../../electron/store/connection/open.ts";
import { fillDisk } from "./fill.ts";
import { makeHall } from "./hall.ts";
import { enter } from "./images.ts";

/** What a start on a full disk came to; a line of JSON. */
export interface Started {
  /** Rows that can be read; null where the store could not be opened. */
  readonly attempts: number | null;
  /** What an entry was answered with: a sentence's key. */
  readonly refused: string;
  /** After room was made. */
  readonly entered: number;
  readonly trouble: string;
}

/**
 * A process in a small file system of its own: makes a store of 30 attempts, ends (as a user ends it or by a kill), fills
 * the disk to the last byte, and starts again.
 */
const [folder = "", ending = ""] = process.argv.slice(2);
const file = join(folder, "tapeline.sqlite");

if (ending === "killed-here") {
  live();
  process.kill(process.pid, "SIGKILL");
} else {
  if (ending === "killed") spawnSync(process.execPath, [process.argv[1] ?? "", folder, "killed-here"]);
  else live().close();
  const makeRoom = fillDisk(folder);
  writeSync(1, `${JSON.stringify(start(makeRoom))}\n`);
}

function live() {
  const store = openStore({ file });
  makeHall(store, 40);
  for (let index = 0; index < 30; index += 1) enter(store, index);
  return store;
}

function start(makeRoom: () => void): Started {
  try {
    const store = openStore({ file });
    const count = () =>
      firstRow<{ count: number }>(store.db, "SELECT count(*) AS count FROM attempt")?.count ?? 0;
    const attempts = count();
    // What the start made free by bringing the log in is filled too.
    const makeMoreRoom = fillDisk(folder);
    let refused = "";
    try {
      for (let index = 40; index < 60; index += 1) enter(store, index);
    } catch (error) {
      refused = (error as { sentence?: { key: string } }).sentence?.key ?? String(error);
    }
    makeRoom();
    makeMoreRoom();
    for (let index = 60; index < 70; index += 1) enter(store, index);
    const entered = count() - attempts;
    store.close();
    openStore({ file }).close();
    return { attempts, refused, entered, trouble: "" };
  } catch (error) {
    return { attempts: null, refused: "", entered: 0, trouble: String(error) };
  }
}
