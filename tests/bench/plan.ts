import { isMainThread, parentPort, Worker, workerData } from "node:worker_threads";
import { seededChance } from "../../electron/domain/chance.ts";
import { search } from "../../electron/domain/plan/schedule/search.ts";
import { plainShop } from "../../electron/domain/plan/schedule/shop.ts";
import { type Instance, instances } from "../checks/instances.ts";
import { atOnce } from "../checks/plan-shops.ts";

/** What two workers find in a published instance, one calling by the order at every station, one at the first alone. */
export interface PlanBench {
  readonly number: number;
  readonly best: number;
  readonly bound: number;
  readonly found: number;
  /** When it was found, in seconds from the beginning. */
  readonly after: number;
  readonly seconds: number;
  readonly evaluations: number;
}

/** What a worker answers. */
interface Answer {
  readonly end: number;
  readonly after: number;
  readonly evaluations: number;
}

interface Task {
  readonly instance: Instance;
  readonly seed: number;
  readonly byOrder: boolean;
  readonly seconds: number;
}

/** @param seconds for each instance, of two processors */
export async function planBench(seconds: number): Promise<PlanBench[]> {
  const benches: PlanBench[] = [];
  for (const instance of instances) {
    const start = performance.now();
    const answers = await Promise.all([
      inWorker({ instance, seed: 1, byOrder: true, seconds }),
      inWorker({ instance, seed: 2, byOrder: false, seconds }),
    ]);
    const { number, best, bound } = instance;
    const [first] = answers.toSorted((a, b) => a.end - b.end || a.after - b.after);
    benches.push({
      ...{ number, best, bound, found: first?.end ?? 0, after: first?.after ?? 0 },
      seconds: (performance.now() - start) / 1000,
      evaluations: answers.reduce((sum, each) => sum + each.evaluations, 0),
    });
  }
  return benches;
}

function inWorker(task: Task): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL(import.meta.url), { workerData: task });
    worker.once("message", resolve);
    worker.once("error", reject);
  });
}

/** A worker's whole life: searches until its time is up, and tells what it found. */
function work({ instance, seed, byOrder, seconds }: Task): Answer {
  const start = performance.now();
  const passed = () => (performance.now() - start) / 1000;
  const searching = {
    ...{ calling: atOnce(instance.places.length, byOrder), random: seededChance([seed, 2, 3, 4]) },
    ...{ evaluations: Number.POSITIVE_INFINITY, bound: instance.bound },
  };
  let answer: Answer = { end: Number.POSITIVE_INFINITY, after: 0, evaluations: 0 };
  for (const { end, evaluations } of search(plainShop(instance.places, instance.rows), searching)) {
    answer = { end, evaluations, after: end < answer.end ? passed() : answer.after };
    if (passed() > seconds) break;
  }
  return answer;
}

// Only as a worker of its own: whoever imports this file from another one's has other data.
if (!isMainThread && workerData?.instance !== undefined) parentPort?.postMessage(work(workerData));
