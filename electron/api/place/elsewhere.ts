import { type AlikeInterval, leftOpen } from "../../domain/statistics/place-between.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { type MarksOfOrigin, marksFromElsewhere } from "../../store/tables/reference-bundles.ts";
import type { Sort } from "./sort.ts";

/** Marks from one origin elsewhere, as bounds; nobody here knows whose they are. */
export interface GroupElsewhere {
  /** mixed: of athletes without a reported category. */
  readonly group: "imported" | "mixed";
  /** The organiser's name for the origin. */
  readonly origin: string;
  readonly marks: readonly AlikeInterval[];
  readonly n: number;
  /** The largest share of the marks that the bounds can leave undecided, better or worse. */
  readonly open: number;
}

/**
 * Returns the references to compare a mark with: of the same fingerprint, one per origin, those of the same category
 * apart from those without one.
 */
export function groupsElsewhere(db: ReadableDb, { fingerprint, category }: Sort): GroupElsewhere[] {
  const origins = Map.groupBy(marksFromElsewhere(db, fingerprint), ({ origin }) => origin);
  return [...origins].flatMap(([origin, all]) => {
    const same = all.filter((marks) => marks.category === (category ?? "unknown"));
    const mixed = all.filter((marks) => marks.category === "not told");
    return [groupOf("imported", origin, same), groupOf("mixed", origin, mixed)];
  });
}

function groupOf(
  group: GroupElsewhere["group"],
  origin: string,
  marks: readonly MarksOfOrigin[],
): GroupElsewhere {
  const n = marks.reduce((sum, { count }) => sum + count, 0);
  return { group, origin, marks, n, open: leftOpen(marks) };
}
