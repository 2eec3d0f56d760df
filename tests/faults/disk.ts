import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** Why a kind of fault can't be tried on this machine; what is skipped says so. */
export interface CanNot {
  readonly why: string;
}

/** Compiles the failing disk with the system's own compiler; the library's path, or why there is none. */
export function buildDisk(): string | CanNot {
  if (process.platform !== "linux") return { why: "the failing disk is made for Linux" };
  const library = join(tmpdir(), `tapeline-disk-${process.pid}.so`);
  if (existsSync(library)) return library;
  const source = new URL("disk.c", import.meta.url).pathname;
  const options = ["-shared", "-fPIC", "-O1", "-o", library, source, "-ldl", "-lpthread"];
  const built = spawnSync("cc", options, { encoding: "utf8" });
  if (built.status === 0) return library;
  return {
    why: `there is no C compiler that builds the failing disk: ${built.error?.message ?? built.stderr}`,
  };
}

/** Whether a file system of our own can be mounted without being the machine's root. */
export function canMount(): true | CanNot {
  const tried = spawnSync("unshare", ["-Urm", "mount", "-t", "tmpfs", "none", "/mnt"], { encoding: "utf8" });
  if (tried.status === 0) return true;
  return { why: `no file system of our own may be mounted here: ${tried.error?.message ?? tried.stderr}` };
}

/**
 * What a process is started by so that `folder` is a file system of its own with so many bytes. It is gone with the
 * process, so what lies there at the end is copied to `after`.
 */
export function onSmallDisk(folder: string, bytes: number, after: string): string[] {
  const script = `size=$1 disk=$2 after=$3; shift 3
    mount -t tmpfs -o size="$size" none "$disk" || exit 99
    "$@"; code=$?
    cp -r "$disk/." "$after"; exit $code`;
  return ["unshare", "-Urm", "sh", "-c", script, "sh", String(bytes), folder, after];
}

export interface Faults {
  /** The power goes at this event (a write, a truncation, a sync). */
  readonly cutAt?: number;
  /** 0: nothing survives that was not synced; else chance decides what does. */
  readonly seed?: number;
  readonly failSyncAt?: number;
  readonly failWriteAt?: number;
  readonly times?: number;
}

/** The environment of a process whose files under `folder` lie on the failing disk. */
export function onFailingDisk(library: string, folder: string, faults: Faults): Record<string, string> {
  const named = {
    FAULT_CUT: faults.cutAt,
    FAULT_SEED: faults.seed,
    FAULT_SYNC: faults.failSyncAt,
    FAULT_WRITE: faults.failWriteAt,
    FAULT_TIMES: faults.times,
  };
  const given = Object.entries(named).flatMap(([name, value]) =>
    value === undefined ? [] : [[name, String(value)] as const],
  );
  return { LD_PRELOAD: library, FAULT_FOLDER: folder, ...Object.fromEntries(given) };
}
