import { type AlikeInterval, leftOpen } from "../../domain/statistics/place-between.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { type MarksOfOrigin, marksFromElsewhere } from "../../store/tables/reference-bundles.ts";
import type { Sort } from "./sort.ts";

/** Marks from one place elsewhere, told as bounds; nobody here knows whose they are. */
export interface GroupElsewhere {
  /** mixed: of athletes whose category was not told. */
  readonly group: "imported" | "mixed";
  /** What people call the place. */
  readonly origin: string;
  readonly marks: readonly AlikeInterval[];
  readonly n: number;
  /** The largest share of the marks of which the bounds can leave open whether they are better or worse. */
  readonly open: number;
}

/**
 * The references that a mark may be compared with: of equal fingerprint, each origin by itself, those of the same
 * category apart from those that were told without one.
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
