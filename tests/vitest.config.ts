import { availableParallelism } from "node:os";
import { defineConfig } from "vitest/config";
import { BaseSequencer, type TestSpecification } from "vitest/node";

/** Files that take the longest, longest first: half of what all 200 take. What is begun last, all other workers wait for. */
const longest = [
  ...["network/attacks", "faults/plug", "checks/league-change-simulation", "door/fuzz/sheets"],
  ...["checks/shared-simulation", "door/demo", "unit/privacy/marks-rule", "door/rehearse-refusals"],
  ...["checks/level-simulation", "network/fuzz", "faults/damage", "door/lock", "checks/plan/plan-forecast"],
].map((name) => `/tests/${name}.test.ts`);

class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    return (await super.sort(files)).toSorted((one, other) => turnOf(one) - turnOf(other));
  }
}

function turnOf({ moduleId }: TestSpecification): number {
  const turn = longest.findIndex((name) => moduleId.endsWith(name));
  return turn < 0 ? longest.length : turn;
}

/** Everything below the window: pure rules, outside values, the store on real files, the door. */
export default defineConfig({
  test: {
    root: new URL("..", import.meta.url).pathname,
    include: ["tests/{unit,store,checks,door,network,faults}/**/*.test.ts"],
    // Left to itself the runner keeps a core free: half of a machine with two. One more than there are cores, since what
    // tries sockets, disks and killed programs waits for them two thirds of its time.
    maxWorkers: availableParallelism() + 1,
    // Programs that tests start, some seventy of them, are read from their sources once and not each time.
    env: { NODE_COMPILE_CACHE: new URL("../node_modules/.cache/compiled", import.meta.url).pathname },
    sequence: { sequencer: LongestFirst },
    // Our modules keep nothing between tests, so a file need not load them anew: a fifth of the time.
    isolate: false,
    // When something is given up that never ends, and nothing else.
    testTimeout: 600_000,
    hookTimeout: 600_000,
  },
});
