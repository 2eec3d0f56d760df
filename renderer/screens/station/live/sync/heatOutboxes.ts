import { oldestStartMs } from "../../../../../electron/domain/heats/start.ts";
import { client } from "../../../../app/client.tsx";
import { holdRefused, isWaiting, keeperOf, keptHere } from "../../../../app/device-keep.ts";
import { tell } from "../../../../app/messages.ts";
import { createOutbox, type ItemKeeper, type Outbox } from "../../../../app/outbox.ts";
import { isDevice } from "../../../../app/table.ts";
import { isUnanswered, sentenceOf } from "../../../../app/trouble.ts";
import { firstBatch, type Outgoing } from "./outgoing.ts";
import { onTableClock, readTableClock } from "./useTableClock.ts";

type OutgoingStart = Extract<Outgoing, { what: "start" }>;

const outboxes = new Map<string, Outbox<Outgoing>>();
/** The channel of a heat in what a device keeps. */
const channelStart = "heat ";
const places = { items: "live.unsent.", by: "live.by." } as const;

/** Returns the initials of a heat's taps: kept with it, so that a crash in the middle asks nobody again. */
export function tapperOf(heatId: string): string | null {
  return localStorage.getItem(places.by + heatId);
}

export function setTapper(heatId: string, by: string): void {
  localStorage.setItem(places.by + heatId, by);
  for (const resolve of waiting.get(heatId) ?? []) resolve(by);
  waiting.delete(heatId);
}

const waiting = new Map<string, ((by: string) => void)[]>();

/** Resolves to the initials of a heat once they are known: taps wait for them, their times do not. */
function knownTapper(heatId: string): Promise<string> {
  const by = tapperOf(heatId);
  if (by !== null) return Promise.resolve(by);
  return new Promise((resolve) => waiting.set(heatId, [...(waiting.get(heatId) ?? []), resolve]));
}

/** Returns the outbox of a heat: one for each, for as long as the window lives. */
export function outboxOf(heatId: string): Outbox<Outgoing> {
  const kept = outboxes.get(heatId);
  if (kept !== undefined) return kept;
  const outbox = createOutbox(
    {
      firstBatch,
      send: (items) => send(heatId, items),
      isUnanswered,
      onRefused(error, items) {
        const sentence = sentenceOf(error);
        tell({ tone: "alert", sentence, follows: "always" });
        if (isDevice)
          for (const { id } of items)
            holdRefused(channelStart + heatId, id, { told: [{ key: sentence.key }], asked: false });
      },
    },
    isDevice ? keeperOf(channelStart + heatId) : deskKeeperOf(heatId),
  );
  outboxes.set(heatId, outbox);
  return outbox;
}

/** Sends what earlier pages left unsent, of any heat. */
export function resumeOutboxes(): void {
  for (const row of keptHere.get()) {
    const { channel } = row;
    if (isWaiting(row) && channel.startsWith(channelStart)) outboxOf(channel.slice(channelStart.length));
  }
  for (const place of Object.keys(localStorage)) {
    if (place.startsWith(places.items)) outboxOf(place.slice(places.items.length));
  }
}

/** At the desk itself nothing is between the window and the store: what a reload must not lose lies in its storage. */
function deskKeeperOf(heatId: string): ItemKeeper<Outgoing> {
  const place = places.items + heatId;
  return {
    read: () => JSON.parse(localStorage.getItem(place) ?? "[]") as Outgoing[],
    write(items) {
      if (items.length === 0) localStorage.removeItem(place);
      else localStorage.setItem(place, JSON.stringify(items));
    },
  };
}

/** Returns the moment in ms since 1970, by this page's monotonic clock. */
export function pageTime(timeStamp: number = performance.now()): number {
  return performance.timeOrigin + timeStamp;
}

/** Sends when a heat was started, on the table's clock: however long it is under way, the table knows when it was. */
async function sendStart(heatId: string, { at, tapped }: OutgoingStart): Promise<void> {
  // The heat's screen is drawn first, which takes a while: the age of the tap is computed just before sending.
  await new Promise((resolve) => setTimeout(resolve, 0));
  if (tapped === null) await readTableClock(heatId);
  const startedAgoMs = Math.min(oldestStartMs, Math.max(0, pageTime() - at));
  const read = tapped ?? onTableClock(at - performance.timeOrigin);
  await client.heat.start.mutate({ heatId, startedAgoMs, tapped: read });
}

async function send(heatId: string, items: readonly Outgoing[]): Promise<void> {
  const [first] = items;
  if (first?.what === "start") return sendStart(heatId, first);
  const by = await knownTapper(heatId);
  if (first?.what === "undo") {
    await client.heat.undo.mutate({ heatId, id: first.id, eventId: first.eventId, by });
  } else {
    const events = items.flatMap((item) => (item.what === "tap" ? [item.tap] : []));
    await client.heat.tap.mutate({ heatId, by, events });
  }
}
