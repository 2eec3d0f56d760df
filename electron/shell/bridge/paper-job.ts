import type { PaperProgress } from "./bridge-types.ts";

/** One page or pile of pages on its way to paper or to a file. */
export interface Job {
  /** Reports progress; fields left out stay the same. */
  tell(progress: Partial<PaperProgress>): void;
  /** Resolves when somebody cancels it; never otherwise. */
  readonly cancelled: Promise<void>;
  end(): void;
}

interface Running {
  progress: PaperProgress;
  readonly cancel: () => void;
}

const running = new Set<Running>();

export function startJob(): Job {
  const { promise, resolve } = Promise.withResolvers<void>();
  const job: Running = { progress: { phase: "pages", done: 0, total: 0 }, cancel: resolve };
  running.add(job);
  return {
    cancelled: promise,
    tell(progress) {
      job.progress = { ...job.progress, ...progress };
    },
    end: () => running.delete(job),
  };
}

/** Returns the newest job's progress; null when none is under way. */
export function paperProgress(): PaperProgress | null {
  return [...running].at(-1)?.progress ?? null;
}

/** Cancels every running job. */
export function cancelPaper(): void {
  for (const { cancel } of running) cancel();
}
