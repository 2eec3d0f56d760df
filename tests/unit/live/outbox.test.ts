import { expect, test, vi } from "vitest";
import { createOutbox, type ItemKeeper } from "../../../renderer/app/outbox.ts";
import {
  firstBatch,
  type Outgoing,
  outgoingEvents,
} from "../../../renderer/screens/station/live/sync/outgoing.ts";

class Refused extends Error {}

/** Far more than it takes on a machine that does other things too. */
const soon = { timeout: 60_000 };

function keeperWith(items: readonly Outgoing[] = []): ItemKeeper<Outgoing> & { kept: readonly Outgoing[] } {
  return {
    kept: items,
    read() {
      return this.kept;
    },
    write(next) {
      this.kept = next;
    },
  };
}

function tap(id: string): Outgoing {
  return { what: "tap", id, tap: { id, lane: 1, kind: "stop", detail: {}, atMs: 5 } };
}

const start: Outgoing = { what: "start", id: "heat start", at: 1, tapped: null };
const undo: Outgoing = { what: "undo", id: "u", eventId: "a", lane: 1, atMs: 9 };

/** A desk whose answers a test gives one by one. */
function door() {
  const sent: string[][] = [];
  const refused: string[] = [];
  const answers: (Error | null)[] = [];
  return {
    firstBatch,
    sent,
    refused,
    answers,
    async send(items: readonly Outgoing[]) {
      sent.push(items.map(({ id }) => id));
      const answer = answers.shift() ?? null;
      if (answer !== null) throw answer;
    },
    isUnanswered: (error: unknown) => !(error instanceof Refused),
    onRefused: (_error: unknown, items: readonly Outgoing[]) => refused.push(...items.map(({ id }) => id)),
  };
}

test("what happens goes in its order: a start alone, taps that wait together, an undo alone", async () => {
  const desk = door();
  const keeper = keeperWith([start, tap("a"), tap("b"), undo, tap("c")]);
  const outbox = createOutbox(desk, keeper);
  await vi.waitFor(() => expect(outbox.view().unsent).toBe(0), soon);
  expect(desk.sent).toEqual([["heat start"], ["a", "b"], ["u"], ["c"]]);
  expect(keeper.kept).toEqual([]);
});

test("without an answer the same ids are sent again until there is one, and kept meanwhile", async () => {
  const desk = door();
  desk.answers.push(new Error("no answer"), new Error("no answer"));
  const keeper = keeperWith();
  const outbox = createOutbox(desk, keeper);
  const states = new Set<string>();
  outbox.subscribe(() => states.add(outbox.view().state));
  outbox.add(tap("a"));
  expect(keeper.kept.map(({ id }) => id)).toEqual(["a"]);
  await vi.waitFor(() => expect(outbox.view().state).toBe("saved"), soon);
  expect(desk.sent).toEqual([["a"], ["a"], ["a"]]);
  expect(states).toEqual(new Set(["sending", "waiting", "saved"]));
  expect(keeper.kept).toEqual([]);
});

test("one refused tap takes no other with it, and is told", async () => {
  const desk = door();
  // Together they are refused; then each speaks for itself.
  desk.answers.push(new Refused(), new Refused(), null);
  const outbox = createOutbox(desk, keeperWith([tap("bad"), tap("good")]));
  await vi.waitFor(() => expect(outbox.view().state).toBe("saved"), soon);
  expect(desk.refused).toEqual(["bad"]);
  expect(desk.sent.at(-1)).toEqual(["good"]);
});

test("what was sent counts on the screen until the desk's view has it, and never twice", async () => {
  const outbox = createOutbox(door(), keeperWith());
  outbox.add(tap("a"));
  outbox.add(undo);
  await vi.waitFor(() => expect(outbox.view().unsent).toBe(0), soon);
  expect(outgoingEvents(outbox.view().items).map(({ kind }) => kind)).toEqual(["stop", "undo"]);
  outbox.seen(new Set(["a"]));
  expect(outbox.view().items.map(({ id }) => id)).toEqual(["u"]);
  outbox.seen(new Set(["a", "u"]));
  expect(outbox.view().items).toEqual([]);
});
