/** What the rule looks at: the order of making, and the calendar day it was made on by its own label. */
export interface NumberedBackup {
  readonly number: number;
  /** `YYYY-MM-DD` */
  readonly date: string;
}

/** One backup a day is kept of so many days. */
export const daysKept = 30;

/**
 * The backups that may go: all of today stay, and of each of the 30 newest other days the newest one. Days are counted
 * and not subtracted, and order is by number: a clock that jumps a year ahead and back makes nothing old.
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
