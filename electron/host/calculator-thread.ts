/** The thread in which long calculations run: it gets one task at a time, and says how far it is and what comes of it. */
import { parentPort } from "node:worker_threads";
import type { Calculation, CalculationKind, Outcomes } from "../api/door/calculate.ts";
import { readOrRefuse } from "../api/reference/read-any.ts";
import type { Seed } from "../domain/chance.ts";
import { forecastOf } from "../domain/plan/forecast.ts";
import { planDay } from "../domain/plan/plan-day.ts";
import type { Progress } from "../domain/plan/told.ts";
import { whatIfs } from "../domain/plan/what-ifs.ts";
import type { ToRead } from "../domain/reference-table/from-elsewhere.ts";
import { goBehindEntries } from "./behind-entries.ts";

/** What the thread says of a task: how far it is, what came of it, or why nothing did. */
export type FromThread =
  | { readonly id: number; readonly done: Progress }
  | { readonly id: number; readonly outcome: Outcomes[CalculationKind] }
  | { readonly id: number; readonly failed: unknown };

/** Ms between two words on how far a task is. */
const betweenWords = 100;

goBehindEntries();

parentPort?.on("message", ({ id, task }: { readonly id: number; readonly task: Calculation }) => {
  try {
    say({ id, outcome: run(begun(task), (done) => say({ id, done })) });
  } catch (failed) {
    say({ id, failed });
  }
});

function say(word: FromThread): void {
  parentPort?.postMessage(word);
}

function begun(task: Calculation): Generator<Progress, Outcomes[CalculationKind], undefined> {
  if (task.kind === "read") return read(task);
  const { known, days } = task;
  const seed = seedOf(task.seed);
  switch (task.kind) {
    case "plan":
      return planDay(task.hall, task.athletes, known, seed, days);
    case "whatIfs":
      return whatIfs(task.hall, task.athletes, { known, seed, ...(days !== undefined && { days }) });
    case "forecast":
      return forecastOf(task.moment, known, seed, days);
  }
}

/** Reads a file from elsewhere in one go: a second at most. */
// biome-ignore lint/correctness/useYield: it has nothing to say on the way.
function* read(task: ToRead): Generator<Progress, Outcomes["read"], undefined> {
  return readOrRefuse(task);
}

/** The three other numbers of a seed: the first digits of pi, in no relation to any day. */
function seedOf(seed: number): Seed {
  return [seed, 314_159_265, 358_979_323, 846_264_338];
}

function run<Outcome>(
  calculation: Generator<Progress, Outcome, undefined>,
  tell: (done: Progress) => void,
): Outcome {
  let told = performance.now();
  for (;;) {
    const step = calculation.next();
    if (step.done === true) return step.value;
    if (performance.now() - told < betweenWords) continue;
    told = performance.now();
    tell(step.value);
  }
}
