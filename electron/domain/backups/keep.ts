/** A backup as the rule sees it: its place in the order of making, and the calendar day in its own label. */
export interface NumberedBackup {
  readonly number: number;
  /** `YYYY-MM-DD` */
  readonly date: string;
}

/** The number of days of which one backup each is kept. */
export const daysKept = 30;

/**
 * Returns the backups that may be deleted: all of today's stay, and the newest of each of the 30 newest other days.
 * Days are counted, not subtracted, and ordered by number: a clock that jumps a year ahead and back makes nothing old.
 */
export function superseded<Backup extends NumberedBackup>(
  backups: readonly Backup[],
  today: string,
): Backup[] {
  const newestFirst = backups.toSorted((a, b) => b.number - a.number);
  const days = new Set<string>();
  return newestFirst.filter(({ date }) => {
    if (date === today) return false;
    if (days.has(date) || days.size >= daysKept) return true;
    days.add(date);
    return false;
  });
}
