import type {
  PageToSave,
  PaperProgress,
  PrintOutcome,
  SaveOutcome,
} from "../../../electron/shell/bridge/bridge-types.ts";
import { bridge } from "../../app/bridge.ts";
import { createCell } from "../../app/cell.ts";
import { tellOutcome } from "../../app/saving.ts";

/** A pile of cards being printed or saved. It goes on when its screen is left. */
export interface CardJob {
  readonly kind: "print" | "save";
  /** Null: nothing is laid out yet, for example while the dialog asks where to save. */
  readonly progress: PaperProgress | null;
}

const failed = { print: { printed: false, why: "failed" }, save: { saved: false, why: "failed" } } as const;

/** Ms between two questions to the shell about the progress: shorter than anybody sees. */
const askEvery = 150;
const job = createCell<CardJob | null>(null);

/** Returns the current job; null when there is none. */
export function useCardJob(): CardJob | null {
  return job.use();
}

/** Prints or saves the page, one job at a time; the message strip says the outcome. */
export async function runCardJob(kind: CardJob["kind"], page: PageToSave, count: number): Promise<void> {
  if (job.get() !== null) return;
  job.set({ kind, progress: null });
  const timer = setInterval(() => void follow(kind), askEvery);
  try {
    tellOutcome("cards", await outcomeOf(kind, page), { count });
  } catch {
    // The shell answers every expected outcome; this is anything else, such as a page that it does not accept.
    tellOutcome("cards", failed[kind]);
  } finally {
    clearInterval(timer);
    job.set(null);
  }
}

/** Stops the job; its outcome then says so. */
export function cancelCardJob(): void {
  void bridge?.cancelPaper();
}

async function follow(kind: CardJob["kind"]): Promise<void> {
  const progress = (await bridge?.paperProgress()) ?? null;
  if (job.get() !== null) job.set({ kind, progress });
}

function outcomeOf(kind: CardJob["kind"], page: PageToSave): Promise<PrintOutcome | SaveOutcome> | undefined {
  const { path, paper } = page;
  return kind === "print" ? bridge?.print({ path, paper }) : bridge?.savePdf(page);
}
