import { join } from "node:path";
import type { Told } from "../store/connection/checks.ts";
import type { StoreLocation } from "../store/connection/connect.ts";
import type { Examined } from "../store/connection/examine.ts";
import { StoreRefused } from "../store/connection/refused.ts";
import type { FromStoreThread, StoreTask } from "./store-thread.ts";
import { inThread } from "./thread.ts";

/** The thread's own code where the program runs from its sources. */
const ownThread = join(import.meta.dirname, "store-thread.ts");

/**
 * Examines a store in a thread of its own, so that a window can say so meanwhile.
 * @param threadFile the file of `store-thread`, where it is not beside this one
 * @throws StoreRefused, or the system's error
 */
export function examineApart(location: StoreLocation, told: Told, threadFile = ownThread): Promise<Examined> {
  const task: StoreTask = { location, what: "examine" };
  return inThread(threadFile, task, (word: FromStoreThread) => {
    if ("at" in word) told(word.at);
    if ("refused" in word) throw StoreRefused.from(word.refused);
    return "examined" in word ? withList(word.examined) : undefined;
  });
}

/** A buffer comes out of another thread as plain bytes. */
function withList(examined: Examined): Examined {
  const { sums } = examined;
  if (sums === null) return examined;
  const { buffer, byteOffset, length } = sums.list;
  return { ...examined, sums: { ...sums, list: Buffer.from(buffer, byteOffset, length) } };
}

/** Looks at the content of a store that is in use, in a thread that goes behind entries (`lookAgain`). */
export async function lookAgainApart(
  location: StoreLocation,
  threadFile = ownThread,
): Promise<string | null> {
  const task: StoreTask = { location, what: "look again" };
  const { damage } = await inThread(threadFile, task, (word: FromStoreThread) =>
    "damage" in word ? word : undefined,
  );
  return damage;
}
