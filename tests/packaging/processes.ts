import { readdirSync, readFileSync, readlinkSync } from "node:fs";

/** One process of the program, as the kernel tells of it (proc(5)). */
export interface Process {
  readonly id: number;
  /** The file that it runs. */
  readonly program: string;
  readonly words: readonly string[];
  /** Chromium's kind: `renderer`, `zygote` …; empty for the main process. */
  readonly kind: string;
  /** Whom it acts as: 0 is root. */
  readonly actsAs: number;
  readonly parent: number;
  /** 2: every system call is filtered. */
  readonly seccomp: number;
  readonly noNewPrivileges: boolean;
  /** What it may do of root's: none when 0. */
  readonly capabilities: bigint;
  readonly userNamespace: string;
  readonly processNamespace: string;
}

/** Every process that was started from the program's folder. */
export function programProcesses(): Process[] {
  const ids = readdirSync("/proc").filter((name) => /^\d+$/.test(name));
  return ids.flatMap((id) => {
    try {
      const read = readProcess(Number(id));
      return read.program.includes("/usr/lib/tapeline/") ? [read] : [];
    } catch (error) {
      // It ended while it was looked at.
      if (["ENOENT", "ESRCH"].includes((error as NodeJS.ErrnoException).code ?? "")) return [];
      throw error;
    }
  });
}

function readProcess(id: number): Process {
  // A process that was forked and not started anew shows its words in one, parted by spaces.
  const words = readFileSync(`/proc/${id}/cmdline`, "utf8").split(/[\0 ]/).filter(Boolean);
  const status = readFileSync(`/proc/${id}/status`, "utf8");
  const value = (name: string) => new RegExp(`^${name}:\\s*(.*)$`, "m").exec(status)?.[1] ?? "";
  return {
    id,
    // The path as this process sees it, from outside the trial's root.
    program: readlinkSync(`/proc/${id}/exe`),
    words,
    kind: words.find((word) => word.startsWith("--type="))?.slice("--type=".length) ?? "",
    actsAs: Number(value("Uid").split("\t")[1]),
    parent: Number(value("PPid")),
    seccomp: Number(value("Seccomp")),
    noNewPrivileges: value("NoNewPrivs") === "1",
    capabilities: BigInt(`0x${value("CapEff")}`),
    userNamespace: readlinkSync(`/proc/${id}/ns/user`),
    processNamespace: readlinkSync(`/proc/${id}/ns/pid`),
  };
}
