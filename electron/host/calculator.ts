import { join } from "node:path";
import { Worker } from "node:worker_threads";
import {
  type Calculating,
  type Calculation,
  type CalculationKind,
  type Calculator,
  type Outcomes,
  Stopped,
} from "../api/door/calculate.ts";
import type { Progress } from "../domain/plan/told.ts";
import type { FromThread } from "./calculator-thread.ts";

/** The thread's own code where the program runs from its sources. */
const ownThread = join(import.meta.dirname, "calculator-thread.ts");

/** One thread, and the task that it is at. */
interface Thread {
  readonly worker: Worker;
  end: ((word: FromThread | { readonly gone: unknown }) => void) | null;
}

/**
 * Makes a calculator with a thread for each kind of calculation, begun when the first one is asked for and kept for the
 * next: the door goes on answering meanwhile.
 * @param threadFile the file of `calculator-thread`, where it is not beside this one
 */
export function createCalculator(threadFile = ownThread): Calculator {
  const threads = new Map<CalculationKind, Thread>();
  let tasks = 0;

  function threadFor(kind: CalculationKind): Thread {
    const there = threads.get(kind);
    if (there !== undefined) return there;
    const worker = new Worker(threadFile, { env: {}, execArgv: [] });
    const thread: Thread = { worker, end: null };
    const gone = (why: unknown) => {
      if (threads.get(kind) === thread) threads.delete(kind);
      thread.end?.({ gone: why });
    };
    worker.on("message", (word: FromThread) => thread.end?.(word));
    worker.on("error", gone);
    worker.on("exit", () => gone(new Stopped()));
    threads.set(kind, thread);
    return thread;
  }

  function stop(kind: CalculationKind): void {
    const thread = threads.get(kind);
    if (thread?.end == null) return;
    threads.delete(kind);
    thread.end({ gone: new Stopped() });
    void thread.worker.terminate();
  }

  return {
    begin<Kind extends CalculationKind>(
      task: Extract<Calculation, { readonly kind: Kind }>,
      tell: (done: Progress) => void,
    ): Calculating<Kind> {
      stop(task.kind);
      const thread = threadFor(task.kind);
      tasks += 1;
      const id = tasks;
      const outcome = new Promise<Outcomes[Kind]>((resolve, reject) => {
        thread.end = (word) => {
          if ("id" in word && word.id !== id) return;
          if ("done" in word) return tell(word.done);
          thread.end = null;
          // A thread that waits keeps no program from ending.
          thread.worker.unref();
          if ("outcome" in word) resolve(word.outcome as Outcomes[Kind]);
          else reject("gone" in word ? word.gone : word.failed);
        };
      });
      thread.worker.ref();
      thread.worker.postMessage({ id, task });
      return {
        outcome,
        stop() {
          if (thread.end !== null && threads.get(task.kind) === thread) stop(task.kind);
        },
      };
    },
    close() {
      for (const [kind, { worker }] of threads) {
        stop(kind);
        void worker.terminate();
      }
      threads.clear();
    },
  };
}
