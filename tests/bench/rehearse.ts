import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** How long the whole rehearsal of the demonstration takes, from the command to its end. */
export interface RehearseBench {
  readonly medianMs: number;
  readonly slowestMs: number;
  readonly targetMs: number;
  readonly runs: number;
}

const runs = 5;
const root = join(import.meta.dirname, "../..");

/** Runs the command as `npm run rehearse` does, after one run that warms the disk; throws when it does not go through. */
export function rehearseBench(): RehearseBench {
  const out = mkdtempSync(join(tmpdir(), "rehearse-bench-"));
  try {
    run(out);
    const times = Array.from({ length: runs }, () => run(out)).sort((a, b) => a - b);
    const medianMs = times[Math.floor(runs / 2)] ?? 0;
    return { medianMs, slowestMs: times.at(-1) ?? 0, targetMs: 5000, runs };
  } finally {
    rmSync(out, { recursive: true });
  }
}

function run(out: string): number {
  const sheets = ["roster", "results", "past"].flatMap((kind) => [
    `--${kind}`,
    join(root, "resources", "demo", `${kind}.csv`),
  ]);
  const start = performance.now();
  const { status, stderr } = spawnSync(
    process.execPath,
    [join(root, "electron", "rehearse.ts"), ...sheets, "--out", out, "--date", "2026-09-19"],
    { encoding: "utf8" },
  );
  if (status !== 0) throw new Error(`The rehearsal ended with ${status}: ${stderr}`);
  return performance.now() - start;
}
