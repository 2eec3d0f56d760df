import { join } from "node:path";
import { Worker } from "node:worker_threads";
import type { Told } from "../store/connection/checks.ts";
import type { StoreLocation } from "../store/connection/connect.ts";
import type { Examined } from "../store/connection/examine.ts";
import { StoreRefused } from "../store/connection/refused.ts";
import type { FromStoreThread, StoreTask } from "./store-thread.ts";

/** The thread's own code where the program runs from its sources. */
const ownThread = join(import.meta.dirname, "store-thread.ts");

/**
 * Examines a store in a thread of its own, so that a window can say so meanwhile.
 * @param threadFile the file of `store-thread`, where it is not beside this one
 * @throws StoreRefused, or the system's error
 */
export async function examineApart(
  location: StoreLocation,
  told: Told,
  threadFile = ownThread,
): Promise<Examined> {
  const word = await inThread({ location, what: "examine" }, told, threadFile);
  if (!("examined" in word)) throw new Error("the store was not examined");
  const { sums } = word.examined;
  // A buffer comes out of another thread as plain bytes.
  const list = sums && Buffer.from(sums.list.buffer, sums.list.byteOffset, sums.list.length);
  return { ...word.examined, sums: sums && list && { ...sums, list } };
}

/** Looks at the content of a store that is in use, in a thread that goes behind entries (`lookAgain`). */
export async function lookAgainApart(
  location: StoreLocation,
  threadFile = ownThread,
): Promise<string | null> {
  const word = await inThread({ location, what: "look again" }, () => {}, threadFile);
  if (!("damage" in word)) throw new Error("the store was not looked at");
  return word.damage;
}

function inThread(task: StoreTask, told: Told, threadFile: string): Promise<FromStoreThread> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(threadFile, { workerData: task, env: {}, execArgv: [] });
    worker.on("message", (word: FromStoreThread) => {
      if ("at" in word) told(word.at);
      else if ("refused" in word) reject(StoreRefused.from(word.refused));
      else if ("failed" in word)
        reject(Object.assign(new Error(word.failed.message), { code: word.failed.code }));
      else resolve(word);
    });
    worker.on("error", reject);
    worker.on("exit", () => reject(new Error("the thread that looks at the store ended")));
    // A program that is closed meanwhile does not wait for it.
    worker.unref();
  });
}
