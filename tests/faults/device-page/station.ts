import { createElement, useEffect } from "react";
import { createRoot, type Root } from "react-dom/client";
import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import { ClientProvider, client, queryClient } from "../../../renderer/app/client.tsx";
import { useChanges } from "../../../renderer/app/feed.ts";
import { isUnanswered } from "../../../renderer/app/trouble.ts";
import { ClockDoubt } from "../../../renderer/screens/station/live/ClockDoubt.tsx";
import { clockOfHeat, doubtOf } from "../../../renderer/screens/station/live/sync/heatClocks.ts";
import { useHeatView } from "../../../renderer/screens/station/live/sync/useHeatView.ts";
import { isRunning, startHeat, useOutbox } from "../../../renderer/screens/station/live/sync/useLive.ts";
import { useTableClock } from "../../../renderer/screens/station/live/sync/useTableClock.ts";
import { type Anchor, anchorOfAnswer, timed } from "../../../renderer/sound/clock.ts";
import type { LiveHeat } from "../../../renderer/tests/live/types.ts";

/** A heat as a screen knows it. Times in ms of the page's `performance.now()`. */
export interface SeenHeat {
  readonly heatId: string;
  readonly state: LiveHeat["state"];
  /** When it was at 0 by this screen's clock; null without one. */
  readonly zeroAt: number | null;
  readonly doubtMs: number;
  readonly startDoubtMs: number | null;
  /** What the screen says about its clock; empty where nothing. */
  readonly told: string;
}

/** A station's screen of the trials: the product's own clock, outbox, feed and note, without lanes and sounds. */
export interface TrialStation {
  show(test: TestCode): void;
  /** Forgets what it showed, as a page that is closed. */
  hide(): void;
  heat(): SeenHeat | null;
  place(test: TestCode, athleteId: number): Promise<void>;
  /** Starts the heat that is shown; returns when it was tapped. */
  start(): number;
  /** Looks once at the clock of the heat that is shown, by `heat.clock` alone; null where it does not run. */
  look(): Promise<Anchor | null>;
  callOff(): Promise<void>;
}

let shown: LiveHeat | null = null;
let root: Root | null = null;
const place = document.createElement("div");

function Station({ test }: { readonly test: TestCode }) {
  useChanges();
  const heat = useHeatView(test, "cm", undefined).data?.heat ?? null;
  useEffect(() => {
    shown = heat;
  }, [heat]);
  return heat === null ? null : createElement(OneHeat, { key: heat.heatId, heat });
}

function OneHeat({ heat }: { readonly heat: LiveHeat }) {
  const { heatId, state } = heat;
  useTableClock(isRunning(heat, useOutbox(heat)) ? null : heatId);
  return state === "running" ? createElement(ClockDoubt, { heatId }) : null;
}

/** Sends again what nobody answered, as whoever presses again does: twice changes nothing. */
async function answered<Answer>(send: () => Promise<Answer>): Promise<Answer> {
  for (;;) {
    try {
      return await send();
    } catch (error) {
      if (!isUnanswered(error)) throw error;
    }
  }
}

function heatHere(): LiveHeat {
  if (shown === null) throw new Error("No heat is shown.");
  return shown;
}

export const station: TrialStation = {
  show(test) {
    document.body.append(place);
    root = createRoot(place);
    root.render(createElement(ClientProvider, null, createElement(Station, { test })));
  },
  hide() {
    root?.unmount();
    root = null;
    shown = null;
    queryClient.clear();
  },
  heat() {
    if (shown === null) return null;
    const { heatId, state, startDoubtMs } = shown;
    const zeroAt = clockOfHeat(heatId)?.performanceAt(0) ?? null;
    return { heatId, state, zeroAt, doubtMs: doubtOf(heatId), startDoubtMs, told: place.textContent ?? "" };
  },
  async place(test, athleteId) {
    const heat = { test, heatId: crypto.randomUUID(), lanes: 1, by: "QA" };
    await answered(() => client.heat.place.mutate({ ...heat, who: { athleteId }, evenResting: true }));
  },
  start() {
    const tappedAt = performance.now();
    startHeat(heatHere(), tappedAt);
    return tappedAt;
  },
  async look() {
    const { heatId } = heatHere();
    const look = () => timed(() => client.heat.clock.query({ heatId }));
    const { answer, ...times } = await answered(look);
    const { elapsedMs } = answer;
    return elapsedMs === null ? null : anchorOfAnswer({ elapsedMs, ...times });
  },
  async callOff() {
    const { heatId } = heatHere();
    await answered(() => client.heat.callOff.mutate({ heatId, by: "QA", reason: "Tried" }));
  },
};
