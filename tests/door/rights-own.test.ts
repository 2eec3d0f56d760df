import { randomUUID } from "node:crypto";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { appRouter } from "../../electron/api/router.ts";
import type { TestCode } from "../../electron/domain/tests/registry.ts";
import { dump } from "../store/hall.ts";
import { sent } from "./heat-hall.ts";
import { readRights } from "./rights.ts";
import { bringTo, entry, reps, type StationDay, stationDay, ticket, trial } from "./station-day.ts";

const own = "agility";
const other = "push-up";
const ours = [...readRights()].flatMap(([path, right]) => (right.station === "own" ? [path] : []));

/** All that an input can name, of one test. */
interface Named {
  readonly test: TestCode;
  readonly heatId: string;
  readonly attemptId: string;
  readonly eventId: string;
  /** In a lane, and called. */
  readonly athletes: readonly number[];
  readonly seen: unknown;
}

interface TwoStations extends StationDay {
  readonly named: Readonly<Record<"own" | "other", Named>>;
}

const by = "QA";

/** Bibs 1 to 4 are at the jumps, 5 and 6 still at the push-ups; both stations have a heat, a call and an attempt. */
async function twoStations(): Promise<TwoStations> {
  const day = await stationDay();
  for (const bib of [1, 2, 3, 4]) await bringTo(day, bib, own);
  day.clock.pass(6);
  const kept = entry(day.idOf(4), own, trial("cw", 7, 0), { sure: true });
  await day.station.enter(kept);
  const { heat } = day.as("station");
  const running = await heat.gather({ test: other, heatId: randomUUID(), lanes: 1, by });
  const { elapsedMs } = await heat.start({ heatId: running.heatId, startedAgoMs: 0 });
  day.clock.tick(2000 - elapsedMs);
  const tap = sent(1, "off", 1000);
  await heat.tap({ heatId: running.heatId, by, events: [tap] });
  await day.station.callAthlete({ athleteId: day.idOf(6), test: other });
  const gathered = await heat.gather({ test: own, heatId: randomUUID(), lanes: 2, by });
  await day.station.callAthlete({ athleteId: day.idOf(3), test: own });
  const done = await day.station.history({ athleteId: day.idOf(4), test: other });
  return {
    ...day,
    named: {
      own: {
        ...{
          test: own,
          heatId: gathered.heatId,
          attemptId: kept.attempts[0]?.id ?? "",
          eventId: randomUUID(),
        },
        ...{ athletes: [1, 3].map(day.idOf), seen: trial("ccw", 6, 1) },
      },
      other: {
        ...{
          test: other,
          heatId: running.heatId,
          attemptId: done[0]?.attempt.attemptId ?? "",
          eventId: tap.id,
        },
        ...{ athletes: [5, 6].map(day.idOf), seen: reps(21) },
      },
    },
  };
}

/** An input with every field that any of the procedures has. */
function inputOf({ test: named, heatId, attemptId, eventId, athletes, seen }: Named, athlete = 0) {
  const athleteId = athletes[athlete] ?? 0;
  return {
    ...{
      test: named,
      heatId,
      attemptId,
      eventId,
      athleteId,
      bib: "4",
      who: { athleteId },
      id: randomUUID(),
      by,
    },
    ...{ attempts: [ticket(seen)], sure: true, variant: named === other ? "full" : "", reason: "A slip" },
    ...{ lanes: 2, to: 2, startedAgoMs: 0, events: [sent(1, "off", 1500)] },
    ...{ attemptIds: [attemptId], athleteIds: [athleteId] },
  };
}

async function ask(day: TwoStations, path: string, input: unknown): Promise<{ key: string; text: string }> {
  const { type } = (appRouter._def.procedures as unknown as Record<string, { _def: { type: string } }>)[path]
    ?._def ?? {
    type: "",
  };
  const json = JSON.stringify(input);
  const url = `http://desk/trpc/${path}`;
  const headers = { "content-type": "application/json" };
  const request =
    type === "query"
      ? new Request(`${url}?input=${encodeURIComponent(json)}`)
      : new Request(url, { method: "POST", headers, body: json });
  const text = await (await day.handle(request, "station", own)).text();
  return { key: /"key":"([^"]+)"/.exec(text)?.[1] ?? "", text };
}

/** Every row that is about the other station: it names the test, its heat or one of its attempts. */
function rowsOfOther(day: TwoStations): unknown[] {
  const tables = dump(day.desk.store.db);
  const attempts = (tables.get("attempt") ?? []) as { id: string; test: string }[];
  const ids = attempts.filter((attempt) => attempt.test === other).map(({ id }) => id);
  const about = new Set<unknown>([other, day.named.other.heatId, ...ids]);
  return [...tables.values()]
    .flat()
    .filter((row) => Object.values(row as object).some((value) => about.has(value)));
}

describe.each(ours)("%s", (path) => {
  test("is for the own station, and for no other", async () => {
    const day = await twoStations();
    expect((await ask(day, path, inputOf(day.named.other))).key).toBe("door.otherStation");
    const { key } = await ask(day, path, inputOf(day.named.own));
    expect(["door.otherStation", "door.badInput"]).not.toContain(key);
  });

  test("is for nothing that names no station", async () => {
    const day = await twoStations();
    const before = rowsOfOther(day);
    for (const input of [{}, [], null, { test: ["agility"] }, { athleteId: day.idOf(6) }]) {
      expect(["door.otherStation", "door.badInput"]).toContain((await ask(day, path, input)).key);
    }
    expect(rowsOfOther(day)).toEqual(before);
  });
});

test("property: whatever a station's desk mixes into an input, nothing of another station is changed or told", async () => {
  const fields = Object.keys(
    inputOf({ test: own, heatId: "", attemptId: "", eventId: "", athletes: [], seen: {} }),
  );
  const which = fc.constantFrom("own", "other", "fresh", "none");
  const mixed = fc.tuple(
    fc.constantFrom(...ours),
    fc.array(which, { minLength: fields.length, maxLength: fields.length }),
  );
  let day = await twoStations();
  let before = rowsOfOther(day);
  let calls = 0;
  await fc.assert(
    fc.asyncProperty(mixed, fc.nat(1), fc.nat(1), async ([path, from], one, two) => {
      calls += 1;
      // What its own station did must not make the rest of the calls pointless.
      if (calls % 30 === 0) {
        day = await twoStations();
        before = rowsOfOther(day);
      }
      const { own: mine, other: theirs } = day.named;
      const fresh = { ...mine, heatId: randomUUID(), attemptId: randomUUID(), eventId: randomUUID() };
      const inputs = {
        own: inputOf(mine, one),
        other: inputOf(theirs, two),
        fresh: inputOf(fresh),
        none: {},
      };
      const input = Object.fromEntries(
        fields.flatMap((field, at) => {
          const chosen: Readonly<Record<string, unknown>> = inputs[from[at] ?? "none"];
          const value = chosen[field];
          return value === undefined ? [] : [[field, value]];
        }),
      );
      const { text } = await ask(day, path, input);
      expect(rowsOfOther(day)).toEqual(before);
      expect(text).not.toContain(theirs.attemptId);
      expect(text).not.toContain(theirs.heatId);
      expect(day.faults).toEqual([]);
    }),
    { numRuns: 800 },
  );
});
