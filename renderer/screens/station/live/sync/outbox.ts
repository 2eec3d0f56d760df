import type { HeatEvent } from "../../../../../electron/domain/heats/heat.ts";

/** An item of a heat to be sent to the desk. Times are by the heat's clock, except a start's. */
export type Outgoing =
  /**
   * `at`: the moment of the start's tap in ms since 1970, by the page's monotonic clock, so that a later page knows it.
   */
  | { readonly what: "start"; readonly id: string; readonly at: number }
  | { readonly what: "tap"; readonly id: string; readonly tap: HeatEvent }
  | {
      readonly what: "undo";
      readonly id: string;
      readonly eventId: string;
      readonly lane: number | null;
      readonly atMs: number;
    };

/** Sends one item, or several taps at once: resolves when the desk has them. */
export interface Door {
  readonly send: (items: readonly Outgoing[]) => Promise<void>;
  /** True if no answer came, so that nobody knows whether it was accepted. */
  readonly isUnanswered: (error: unknown) => boolean;
  /** Called at a refusal, which is an answer: the item is dropped, and somebody must hear of it. */
  readonly onRefused: (error: unknown, items: readonly Outgoing[]) => void;
}

/** Stores unsent items beyond the page's life. */
export interface ItemKeeper {
  read(): readonly Outgoing[];
  write(items: readonly Outgoing[]): void;
}

/** The outbox for a screen; a new object at every change. */
export interface OutboxView {
  /** Items not known to be in the desk's view: sent or not, all of them count on the screen. */
  readonly items: readonly Outgoing[];
  /** saved: the desk has everything. sending: under way. waiting: no answer, to be retried. */
  readonly state: "saved" | "sending" | "waiting";
  readonly unsent: number;
}

export interface Outbox {
  view(): OutboxView;
  subscribe(listener: () => void): () => void;
  add(item: Outgoing): void;
  /** Drops the items that the desk's own view has. */
  seen(ids: ReadonlySet<string>): void;
}

const firstDelayMs = 150;
const longestDelayMs = 2_000;

/**
 * Sends a heat's items in order, until the desk has them. Every item has its own id, so that sending it again changes
 * nothing; unsent ones survive a reload.
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
          // One of them was refused, and none accepted: each is sent alone now.
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

/** Returns the items to send together: consecutive taps; a start and an undo go alone. */
function firstBatch(items: readonly Outgoing[]): readonly Outgoing[] {
  const [first] = items;
  if (first === undefined || first.what !== "tap") return items.slice(0, 1);
  const end = items.findIndex(({ what }) => what !== "tap");
  return items.slice(0, end < 0 ? items.length : end);
}

/** Returns unsent items as the events that the desk will store. */
export function outgoingEvents(items: readonly Outgoing[]): HeatEvent[] {
  return items.flatMap((item): HeatEvent[] => {
    if (item.what === "tap") return [item.tap];
    if (item.what === "start") return [];
    const { id, lane, atMs, eventId } = item;
    return [{ id, lane, atMs, kind: "undo", detail: { eventId } }];
  });
}
