interface Point {
  readonly clientX: number;
  readonly clientY: number;
}

/** Where a key was, and whether it was a running lane's. */
export interface Seen {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly isRunning: boolean;
}

/** What a finger was meant for: what it is on, nothing that is still there, or another key. */
export type Meant<Key> = "target" | "nothing" | Key;

function lies({ clientX, clientY }: Point, box: Seen | undefined): boolean {
  if (box === undefined) return false;
  return clientX >= box.left && clientX <= box.right && clientY >= box.top && clientY <= box.bottom;
}

/**
 * Returns what a finger was meant for that is on `target` now: whoever aims sees the screen of some tenths of a second ago.
 * What was there then counts. A running lane's key is pressed all the same where it has come since: a time that was taken
 * wrongly is undone in one press, and one that was not taken is lost. Only the second press on a lane that the first has
 * ended is nobody else's.
 * @param target the key under the finger now; null where there is none
 * @param before where each key was then
 * @param isRunning true for the key of a lane that is running now
 */
export function meantBy<Key>(
  point: Point,
  target: Key | null,
  before: ReadonlyMap<Key, Seen>,
  isRunning: (key: Key) => boolean,
): Meant<Key> {
  if (target !== null && lies(point, before.get(target))) return "target";
  const there = [...before].filter(([, box]) => lies(point, box));
  const stillRunning = there.find(([key]) => isRunning(key));
  if (stillRunning !== undefined) return stillRunning[0];
  if (target === null) return "target";
  const hasEnded = there.some(([, box]) => box.isRunning);
  return isRunning(target) && !hasEnded ? "target" : "nothing";
}
