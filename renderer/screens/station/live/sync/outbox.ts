import type { HeatEvent } from "../../../../../electron/domain/heats/heat.ts";

/** Something of a heat on its way to the desk. Times by the heat's clock, but for a start. */
export type Outgoing =
  /** `at`: when the start was tapped, in ms since 1970 by the page's monotonic clock, so that a later page can tell. */
  | { readonly what: "start"; readonly id: string; readonly at: number }
  | { readonly what: "tap"; readonly id: string; readonly tap: HeatEvent }
  | {
      readonly what: "undo";
      readonly id: string;
      readonly eventId: string;
      readonly lane: number | null;
      readonly atMs: number;
    };

/** How one item, or several taps at once, are sent: resolves when the desk has them. */
export interface Door {
  readonly send: (items: readonly Outgoing[]) => Promise<void>;
  /** True where no answer came, and nobody knows whether it was taken. */
  readonly isUnanswered: (error: unknown) => boolean;
  /** A refusal is an answer: what was refused is gone, and somebody must hear of it. */
  readonly onRefused: (error: unknown, items: readonly Outgoing[]) => void;
}

/** Where what was not sent yet outlives the page. */
export interface ItemKeeper {
  read(): readonly Outgoing[];
  write(items: readonly Outgoing[]): void;
}

/** What a screen shows of it; a new object whenever something changes. */
export interface OutboxView {
  /** Not known to be in what the desk tells: sent or not, all of it counts on the screen. */
  readonly items: readonly Outgoing[];
  /** saved: the desk has everything. sending: on its way. waiting: no answer, it is tried again. */
  readonly state: "saved" | "sending" | "waiting";
  readonly unsent: number;
}

export interface Outbox {
  view(): OutboxView;
  subscribe(listener: () => void): () => void;
  add(item: Outgoing): void;
  /** The desk's own view has these by now. */
  seen(ids: ReadonlySet<string>): void;
}

const firstDelayMs = 150;
const longestDelayMs = 2_000;

/**
 * Sends what happens in a heat in its order, until the desk has it. Every item has its own id, so that sending it again
 * changes nothing; what was not sent is kept through a reload.
 */
export function createOutbox(door: Door, keeper: ItemKeeper): Outbox {
  const listeners = new Set<() => void>();
  let unsent: readonly Outgoing[] = keeper.read();
  let sent: readonly Outgoing[] = [];
  let state: OutboxView["state"] = "saved";
  let view: OutboxView = { items: unsent, state, unsent: unsent.length };
  let busy = false;

  function show(): void {
    view = { items: [...sent, ...unsent], state, unsent: unsent.length };
    for (const listener of listeners) listener();
  }
  async function flush(): Promise<void> {
    if (busy) return;
    busy = true;
    let delay = firstDelayMs;
    let alone = false;
    while (unsent.length > 0) {
      const batch = alone ? unsent.slice(0, 1) : firstBatch(unsent);
      try {
        if (state === "saved") state = "sending";
        show();
        await door.send(batch);
        sent = [...sent, ...batch];
        drop(batch);
        delay = firstDelayMs;
        state = "sending";
      } catch (error) {
        if (door.isUnanswered(error)) {
          state = "waiting";
          show();
          await new Promise((resolve) => setTimeout(resolve, delay));
          delay = Math.min(longestDelayMs, delay * 2);
        } else if (batch.length > 1) {
          // One of them was refused, and none was taken: each has to speak for itself.
          alone = true;
        } else {
          drop(batch);
          door.onRefused(error, batch);
        }
      }
    }
    busy = false;
    state = "saved";
    show();
  }
  function drop(batch: readonly Outgoing[]): void {
    unsent = unsent.filter((item) => !batch.includes(item));
    keeper.write(unsent);
  }
  void flush();
  return {
    view: () => view,
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    add(item) {
      unsent = [...unsent, item];
      keeper.write(unsent);
      show();
      void flush();
    },
    seen(ids) {
      const left = sent.filter(({ id }) => !ids.has(id));
      if (left.length === sent.length) return;
      sent = left;
      show();
    },
  };
}

/** Taps that follow each other go together; a start and an undo go alone. */
function firstBatch(items: readonly Outgoing[]): readonly Outgoing[] {
  const [first] = items;
  if (first === undefined || first.what !== "tap") return items.slice(0, 1);
  const end = items.findIndex(({ what }) => what !== "tap");
  return items.slice(0, end < 0 ? items.length : end);
}

/** What is on its way as the events that the desk will keep. */
export function outgoingEvents(items: readonly Outgoing[]): HeatEvent[] {
  return items.flatMap((item): HeatEvent[] => {
    if (item.what === "tap") return [item.tap];
    if (item.what === "start") return [];
    const { id, lane, atMs, eventId } = item;
    return [{ id, lane, atMs, kind: "undo", detail: { eventId } }];
  });
}
