import type { BackupHeader } from "./records.ts";

/** The facts in a backup's file name. */
export interface NamedBackup {
  readonly name: string;
  readonly source: string;
  readonly number: number;
  /** The calendar day of making, `YYYY-MM-DD`. */
  readonly date: string;
}

const pattern = /^tapeline-([0-9a-f]{8})-(\d{6,9})-(\d{4}-\d{2}-\d{2})-(\d{4})\.backup$/;

function partsOf(name: string): RegExpExecArray | null {
  return pattern.exec(name);
}

/** Returns a name like `tapeline-3f09ab12-000042-2026-11-14-0905.backup`; `clock` is local time, `YYYY-MM-DDTHH:MM`. */
export function backupName(
  { source, number }: Pick<BackupHeader, "source" | "number">,
  clock: string,
): string {
  const [date = "", time = ""] = clock.split("T");
  return `tapeline-${source}-${String(number).padStart(6, "0")}-${date}-${time.replace(":", "")}.backup`;
}

/** Reads a backup's facts from its file name; null for a file of another name. */
export function namedBackup(name: string): NamedBackup | null {
  const [, source = "", number = "", date = ""] = partsOf(name) ?? [];
  return source === "" ? null : { name, source, number: Number(number), date };
}

/** Returns the name of a backup that was made again under another number; day and time are those of the first making. */
export function renumbered({ name, source }: Pick<NamedBackup, "name" | "source">, number: number): string {
  const [, , , date = "", time = ""] = partsOf(name) ?? [];
  return backupName({ source, number }, `${date}T${time}`);
}
