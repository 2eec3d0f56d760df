import { randomUUID } from "node:crypto";
import type { Store } from "../../store/connection/store.ts";
import { type Calculating, type Calculator, type Outcomes, Stopped } from "../door/calculate.ts";
import type { StampedTask } from "./task.ts";

/** The two calculations of a plan. */
export const workKinds = ["plan", "whatIfs"] as const;
export type WorkKind = (typeof workKinds)[number];

/** A calculation that was begun: how far it is, and what it came to. */
export interface Work<Kind extends WorkKind> {
  readonly id: string;
  readonly dayId: number;
  readonly of: StampedTask;
  state: "running" | "done" | "stopped" | "failed";
  /** 0 to 1. */
  done: number;
  outcome: Outcomes[Kind] | null;
  readonly calculating: Calculating<Kind>;
}

/** The newest calculation of each kind. */
export type Works = { [Kind in WorkKind]?: Work<Kind> };

const worksOfStores = new WeakMap<Store, Works>();

/** Returns what was worked out on a store since the program started: it is kept in memory alone. */
export function worksOf(store: Store): Works {
  const known = worksOfStores.get(store) ?? {};
  worksOfStores.set(store, known);
  return known;
}

/** Whom to tell of a calculation. */
interface Hearers<Kind extends WorkKind> {
  ended(work: Work<Kind>): void;
  failed(error: unknown): void;
}

/**
 * Begins a calculation and returns it; one of the same task that is under way or done is returned as it is. Another one
 * of the kind that is under way is stopped.
 */
export function beginWork<Kind extends WorkKind>(
  works: Works,
  calculator: Calculator,
  kind: Kind,
  { dayId, of }: Pick<Work<Kind>, "dayId" | "of">,
  hearers: Hearers<Kind>,
): Work<Kind> {
  const before: Work<Kind> | undefined = works[kind];
  if (before?.of.stamp === of.stamp && (before.state === "running" || before.state === "done")) return before;
  before?.calculating.stop();
  const calculating = calculator.begin<Kind>({ kind, ...of.task } as never, (done) => {
    work.done = done;
  });
  const work: Work<Kind> = {
    ...{ id: randomUUID(), dayId, of, calculating },
    ...{ state: "running", done: 0, outcome: null },
  };
  (works as { [key in Kind]?: Work<Kind> })[kind] = work;
  void follow(work, hearers);
  return work;
}

async function follow<Kind extends WorkKind>(work: Work<Kind>, hearers: Hearers<Kind>): Promise<void> {
  try {
    work.outcome = await work.calculating.outcome;
    work.state = "done";
    work.done = 1;
  } catch (error) {
    work.state = error instanceof Stopped ? "stopped" : "failed";
    if (work.state === "failed") hearers.failed(error);
  }
  hearers.ended(work);
}
