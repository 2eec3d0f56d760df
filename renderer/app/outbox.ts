/** What is sent: each item has an id of its own, so that it may come twice. */
export interface Sendable {
  readonly id: string;
}

/** The way to the table. */
export interface Door<Item extends Sendable> {
  /** Returns the items to send together, from the first on; at least one of them. */
  readonly firstBatch: (items: readonly Item[]) => readonly Item[];
  /** Sends a batch: resolves when the table has it on its disk. */
  readonly send: (items: readonly Item[]) => Promise<void>;
  /** True if no answer came, so that nobody knows whether it was accepted. */
  readonly isUnanswered: (error: unknown) => boolean;
  /** Called at a refusal, which is an answer: the item leaves the outbox, and somebody must hear of it. */
  readonly onRefused: (error: unknown, items: readonly Item[]) => void;
}

/** Stores unsent items beyond the page's life. */
export interface ItemKeeper<Item extends Sendable> {
  read(): readonly Item[];
  write(items: readonly Item[]): void;
}

/** The outbox for a screen; a new object at every change. */
export interface OutboxView<Item extends Sendable> {
  /** Items not known to be in the table's view: sent or not, all of them count on the screen. */
  readonly items: readonly Item[];
  /** saved: the table has everything. sending: under way. waiting: no answer, to be retried. */
  readonly state: "saved" | "sending" | "waiting";
  readonly unsent: number;
}

export interface Outbox<Item extends Sendable> {
  view(): OutboxView<Item>;
  subscribe(listener: () => void): () => void;
  add(item: Item): void;
  /** Drops the items that the table's own view has. */
  seen(ids: ReadonlySet<string>): void;
}

const firstDelayMs = 150;
const longestDelayMs = 2_000;

/**
 * Sends items in order, until the table has them. Every item has its own id, so that sending it again changes
 * nothing; unsent ones survive a reload.
 */
export function createOutbox<Item extends Sendable>(
  door: Door<Item>,
  keeper: ItemKeeper<Item>,
): Outbox<Item> {
  const listeners = new Set<() => void>();
  let unsent: readonly Item[] = keeper.read();
  let sent: readonly Item[] = [];
  let state: OutboxView<Item>["state"] = "saved";
  let view: OutboxView<Item> = { items: unsent, state, unsent: unsent.length };
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
      const batch = alone ? unsent.slice(0, 1) : door.firstBatch(unsent);
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
          // Kept elsewhere before it is dropped here: a crash in between leaves it in both.
          door.onRefused(error, batch);
          drop(batch);
        }
      }
    }
    busy = false;
    state = "saved";
    show();
  }
  function drop(batch: readonly Item[]): void {
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
