import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/**
 * `npm test`: everything that must hold, in the order in which a mistake is cheapest to find; every step runs, so that
 * one red run tells all. Ends with the count of what passed and failed.
 */
interface Step {
  readonly name: string;
  readonly command: readonly string[];
  /** Reads the counts of a runner that writes them; a plain step counts as one. */
  readonly counts?: () => Counts;
}

interface Counts {
  readonly passed: number;
  readonly failed: number;
}

const folder = mkdtempSync(join(tmpdir(), "tapeline-tests-"));
const unitReport = join(folder, "unit.json");
const windowReport = join(folder, "window.json");

const steps: readonly Step[] = [
  { name: "types", command: ["tsc", "-b"] },
  { name: "lint", command: ["biome", "check", "--error-on-warnings"] },
  { name: "what nobody uses", command: ["knip", "--config", "tests/knip.jsonc"] },
  {
    name: "unit, store, checks, door",
    command: [
      ...["vitest", "run", "--config", "tests/vitest.config.ts"],
      ...["--reporter=default", "--reporter=json", `--outputFile.json=${unitReport}`],
    ],
    counts: () => {
      const report = JSON.parse(readFileSync(unitReport, "utf8")) as {
        numPassedTests: number;
        numFailedTests: number;
        numFailedTestSuites: number;
      };
      // A file that can't even be loaded has no test to fail.
      const broken = report.numFailedTests === 0 ? report.numFailedTestSuites : 0;
      return { passed: report.numPassedTests, failed: report.numFailedTests + broken };
    },
  },
  { name: "build", command: ["node", "electron/runtime/build.ts"] },
  {
    name: "the real window",
    command: [
      ...["playwright", "test", "--config", "tests/playwright.config.ts", "--reporter=list,json"],
      ...(process.argv[2] === "whole" ? ["--project=sweeps", "--project=single sweeps"] : []),
      ...["--project=first", "--project=rest"],
    ],
    counts: () => {
      const report = JSON.parse(readFileSync(windowReport, "utf8")) as {
        stats: { expected: number; unexpected: number; flaky: number };
      };
      return { passed: report.stats.expected + report.stats.flaky, failed: report.stats.unexpected };
    },
  },
];

function run(step: Step): Counts {
  console.log(`\n— ${step.name}`);
  const started = performance.now();
  const [command = "", ...rest] = step.command;
  const result = spawnSync(command, rest, {
    stdio: "inherit",
    env: { ...process.env, PLAYWRIGHT_JSON_OUTPUT_FILE: windowReport },
  });
  const ok = result.status === 0;
  console.log(`  ${ok ? "ok" : "FAILED"} in ${((performance.now() - started) / 1000).toFixed(1)} s`);
  return counted(step, ok);
}

function counted(step: Step, ok: boolean): Counts {
  const plain = { passed: ok ? 1 : 0, failed: ok ? 0 : 1 };
  if (step.counts === undefined) return plain;
  try {
    const counts = step.counts();
    // A runner that ends badly with nothing failed has failed all the same.
    return ok || counts.failed > 0 ? counts : { ...counts, failed: 1 };
  } catch {
    console.log("  no report was written");
    return { passed: 0, failed: 1 };
  }
}

const all = steps.map(run);
rmSync(folder, { recursive: true, force: true });
const passed = all.reduce((sum, counts) => sum + counts.passed, 0);
const failed = all.reduce((sum, counts) => sum + counts.failed, 0);
console.log(`\n${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;
