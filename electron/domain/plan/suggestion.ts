import { quantile } from "../statistics/quantile.ts";
import { changed } from "./change.ts";
import { endsOf, type ManyDays } from "./days.ts";
import type { Hall } from "./hall.ts";
import { type Calculation, within } from "./progress.ts";
import type { Relief } from "./relief.ts";
import { meanOfAll, spanOf } from "./span.ts";
import type { Change, WhatIf } from "./told.ts";

/** A change is worth a word when at least 8 of 10 simulated days end at least so much earlier, in seconds. Ours, no source. */
const leastSaved = 180;
const shareOfDays = 0.8;

/**
 * Returns the one change that helps most, tried on the same days: one more place or lane, or one more judge. Rest and
 * order are not suggested, since a result belongs to them. Null when none is worth a word.
 * @param ends of the days as they are
 * @param few number of days on which all changes are tried; the best one is then told by all days
 * @param reliefs tried on those days
 */
export function* suggestionFor(
  days: ManyDays,
  ends: readonly number[],
  few: number,
  reliefs: readonly Relief[],
): Calculation<WhatIf | null> {
  const changes = changesAtHand(days.moment.hall);
  let best: { change: Change; mean: number } | null = null;
  for (const [index, change] of changes.entries()) {
    const share = 0.8 / changes.length;
    const tried = reliefAs(change, days.moment.hall, reliefs);
    const saved =
      tried ?? (yield* within(savedBy(change, days, ends, few), index * share, (index + 1) * share));
    const mean = meanOfAll(saved);
    if (isClear(saved) && mean > (best?.mean ?? 0)) best = { change, mean };
  }
  if (best === null) return null;
  const saved = yield* within(savedBy(best.change, days, ends, ends.length), 0.8, 1);
  return isClear(saved) ? { changes: [best.change], saved: spanOf(saved) } : null;
}

/** Returns what a relief has told of a change already: where judges do not limit, one more place is the same. */
function reliefAs(
  change: Change,
  { judges }: Hall,
  reliefs: readonly Relief[],
): readonly number[] | undefined {
  if (change.kind !== "place" || judges !== null) return undefined;
  return reliefs.find(({ test }) => test === change.test)?.saved;
}

/** Returns what can be done while a day runs. */
function changesAtHand({ stations, judges }: Hall): Change[] {
  return [
    ...stations.map(({ test }) => ({ kind: "place", test }) as const),
    ...stations.filter(({ lanes }) => lanes > 1).map(({ test }) => ({ kind: "lane", test }) as const),
    ...(judges === null ? [] : [{ kind: "judge" } as const]),
  ];
}

function* savedBy(
  change: Change,
  { moment, draws }: ManyDays,
  ends: readonly number[],
  days: number,
): Calculation<number[]> {
  const other = changed(moment, change);
  if (other === null) return [];
  const changedEnds = yield* endsOf(other, draws.slice(0, days));
  return changedEnds.map((end, day) => (ends[day] ?? end) - end);
}

function isClear(saved: readonly number[]): boolean {
  return saved.length > 0 && quantile(saved, 1 - shareOfDays) >= leastSaved;
}
