import { Worker } from "node:worker_threads";

/** An error as plain values: on its way to another thread it would lose its code, which says whether the disk is full. */
export interface ErrorWith {
  readonly message: string;
  readonly code: unknown;
}

export function errorWith(error: unknown): ErrorWith {
  const { message, code } = (error ?? {}) as { message?: unknown; code?: unknown };
  return { message: String(message ?? error), code };
}

/**
 * Runs one task in a thread of its own.
 * @param word takes what the thread says: its outcome, or undefined while there is more to come
 * @throws what `word` throws, or an Error with the code of what failed there
 */
export function inThread<Word extends object, Outcome>(
  threadFile: string,
  task: unknown,
  word: (said: Word) => Outcome | undefined,
): Promise<Outcome> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(threadFile, { workerData: task, env: {}, execArgv: [] });
    worker.on("message", (said: Word | { readonly failed: ErrorWith }) => {
      if ("failed" in said) {
        const { message, code } = said.failed as ErrorWith;
        return reject(Object.assign(new Error(message), { code }));
      }
      try {
        const outcome = word(said as Word);
        if (outcome !== undefined) resolve(outcome);
      } catch (error) {
        reject(error);
      }
    });
    worker.on("error", reject);
    worker.on("exit", () => reject(new Error("the thread ended before its task")));
    // A program that is closed meanwhile does not wait for it.
    worker.unref();
  });
}
