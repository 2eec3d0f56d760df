/** What the order looks at: whose store it is of, and how many backups of it were made before. */
export interface Numbered {
  readonly source: string;
  readonly number: number;
}

/** A backup with whether it is of the store that is here. */
export interface Ordered<Backup> {
  readonly backup: Backup;
  readonly own: boolean;
}

/**
 * Backups in the order in which they are offered: this store's own first, the newest by number at the head; then those of
 * other computers, the newest of each before the second of any, since their numbers say nothing of each other. No clock
 * has a say: one that was a year ahead at one backup would put that one first for a year.
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
