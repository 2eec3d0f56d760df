import type { TestCode } from "../../domain/tests/registry.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { cachedUntilWrite } from "../../store/connection/until-write.ts";
import type { Day } from "../../store/tables/days.ts";
import { restedInOrder } from "./call-order.ts";
import { isFloorSettled, queueOf } from "./runners.ts";

/**
 * Tells a view of a test's station at the instant `now` (ISO 8601); `asked` names all that it depends on beside the store and
 * the queue.
 */
export type KeptView<View> = (
  db: ReadableDb,
  day: Day,
  seen: { readonly test: TestCode; readonly now: string },
  asked: readonly unknown[],
  tell: () => View,
) => View;

/**
 * Makes a memory of views until something in the store changes: of a dozen devices several ask for the same one. Nothing is
 * kept while a time of the day is ahead of the clock, since it counts otherwise as the clock goes on, and a view of before
 * somebody was rested is not told after it, where the order of the calls follows that.
 */
export function keptUntilWrite<View>(): KeptView<View> {
  const viewsOf = cachedUntilWrite((_db: ReadableDb, _dayId: number) => new Map<string, View>());
  return (db, day, { test, now }, asked, tell) => {
    if (!isFloorSettled(db, day, now)) return tell();
    const views = viewsOf(db, day.id);
    const key = JSON.stringify([test, restedInOrder(db, day, queueOf(db, day, test, now), now), ...asked]);
    const there = views.get(key);
    if (there !== undefined) return there;
    const view = tell();
    views.set(key, view);
    return view;
  };
}
