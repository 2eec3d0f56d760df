/** A backup's place in the order: its store, and the number of backups made of that store before. */
export interface Numbered {
  readonly source: string;
  readonly number: number;
}

/** A backup, and whether it is one of this store. */
export interface Ordered<Backup> {
  readonly backup: Backup;
  readonly own: boolean;
}

/**
 * Returns backups in the order of offering: this store's own first, the newest by number at the head. Those of other
 * computers follow, the newest of each before the second of any, since their numbers can't be compared. Clocks don't
 * count: one that was a year ahead at one backup would put that backup first for a year.
 */
export function ownFirst<Backup extends Numbered>(
  backups: readonly Backup[],
  isOwn: (backup: Backup) => boolean,
): Ordered<Backup>[] {
  const byNumber = backups.toSorted((a, b) => b.number - a.number || a.source.localeCompare(b.source));
  const own = byNumber.filter(isOwn);
  const others = byNumber.filter((each) => !isOwn(each));
  const rank = new Map<Backup, number>();
  const many = new Map<string, number>();
  for (const each of others) {
    rank.set(each, many.get(each.source) ?? 0);
    many.set(each.source, (many.get(each.source) ?? 0) + 1);
  }
  const inTurn = others.toSorted(
    (a, b) => (rank.get(a) ?? 0) - (rank.get(b) ?? 0) || a.source.localeCompare(b.source),
  );
  return [
    ...own.map((backup) => ({ backup, own: true })),
    ...inTurn.map((backup) => ({ backup, own: false })),
  ];
}
