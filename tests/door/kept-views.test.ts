import { randomUUID } from "node:crypto";
import fc from "fast-check";
import { expect, test } from "vitest";
import { placeDevice, removeDevice } from "../../electron/store/tables/devices.ts";
import { connectionOf } from "../store/connection.ts";
import { deviceAt } from "./devices-of-a-day.ts";
import { by, hallAt, sent } from "./heat-hall.ts";
import { entry, jump, setState } from "./station-day.ts";

/** What is kept of a station's views for whoever asks next: never something old, and never what is another's. */

const leap = "vertical" as const;
const who = { bib: fc.integer({ min: 1, max: 6 }), at: fc.constantFrom("red", "blue", "table") };
const step = fc.oneof(
  fc.record({ kind: fc.constant("enter"), ...who, touch: fc.integer({ min: 2500, max: 2600 }) }),
  fc.record({
    kind: fc.constantFrom("call", "uncall", "place", "tap", "end", "leave", "come", "skip"),
    ...who,
  }),
  fc.record({ kind: fc.constant("next"), ...who }),
  fc.record({ kind: fc.constantFrom("move", "gone", "nothing"), ...who }),
  // Back, too: somebody sets the clock.
  fc.record({ kind: fc.constant("clock"), ...who, minutes: fc.integer({ min: -20, max: 20 }) }),
);
type Step = typeof step extends fc.Arbitrary<infer One> ? One : never;

async function walls() {
  const hall = await hallAt(leap);
  const devices = { red: deviceAt(hall, "Red phone", leap), blue: deviceAt(hall, "Blue phone", leap) };
  const at = { red: hall.from(devices.red), blue: hall.from(devices.blue), table: hall.as("organiser") };
  return { hall, devices, at };
}
type Walls = Awaited<ReturnType<typeof walls>>;

async function take({ hall, devices, at }: Walls, done: Step): Promise<void> {
  const caller = at[done.at as keyof typeof at];
  const own = { athleteId: hall.idOf(done.bib), test: leap };
  const live = async () => (await caller.heat.view({ test: leap })).heat;
  const heatId = (await live())?.heatId ?? randomUUID();
  const { db } = hall.desk.store;
  switch (done.kind) {
    case "enter":
      await caller.station.enter(
        entry(own.athleteId, leap, jump(2100, "touch" in done ? done.touch : 2500), { sure: true }),
      );
      return;
    case "call":
      return caller.station.callAthlete(own);
    case "uncall":
      return caller.station.uncall(own);
    case "next":
      await caller.station.callNext({ test: leap });
      return;
    case "place":
      await caller.heat.place({ test: leap, heatId, lanes: 4, by, who: { bib: `${done.bib}` } });
      return;
    case "tap":
      await caller.heat.tap({ heatId, by, events: [sent(1, "reach", 1, { length: 2100 })] });
      return;
    case "end":
      await caller.heat.end({ heatId, by, setAside: true });
      return;
    case "leave":
      return setState(hall, hall.dayId, own.athleteId, "expected", null);
    case "come":
      return setState(hall, hall.dayId, own.athleteId, "testing", done.bib);
    case "skip":
      await hall.organiser.skip({ ...own, reason: "Sore", by: "OR" });
      return;
    case "move":
      hall.desk.store.write([], (to) => placeDevice(to, devices.blue.id, { role: "station", test: "core" }));
      return;
    case "gone":
      hall.desk.store.write([], (to) => removeDevice(to, devices.red.id));
      return;
    case "clock":
      return hall.clock.pass("minutes" in done ? done.minutes : 1);
    default:
      expect(db.inTransaction).toBe(false);
  }
}

type Name = keyof Walls["at"];
const names = ["red", "blue", "table"] as const;

/** All that one of the three is told. */
async function toldTo({ at }: Walls, name: Name): Promise<string> {
  const { station, heat } = at[name];
  return JSON.stringify([
    await station.view({ test: leap, most: 2 }),
    await station.view({ test: leap, most: 8 }),
    await heat.view({ test: leap }),
    await heat.view({ test: leap, lengths: "in" }),
  ]);
}

/** The same of each, beginning with one of them. */
async function toldFrom(day: Walls, first: number): Promise<Map<Name, string>> {
  const seen = new Map<Name, string>();
  for (const name of [...names.slice(first), ...names.slice(0, first)])
    seen.set(name, await toldTo(day, name));
  return seen;
}

/** Makes the store forget all that it keeps of reads: a row is written, with what it says already. */
function forget({ hall }: Walls): void {
  connectionOf(hall.desk.store.db).exec("UPDATE day SET title = title");
}

test("a kept view is what would be read now, for whoever asks, whatever is done and wherever the clock is set", async () => {
  let taken = 0;
  await fc.assert(
    fc.asyncProperty(fc.array(step, { minLength: 10, maxLength: 20 }), fc.nat(2), async (steps, first) => {
      const day = await walls();
      for (const [index, done] of steps.entries()) {
        const was = day.hall.desk.store.seq();
        await take(day, done).catch(() => undefined);
        if (day.hall.desk.store.seq() > was) taken += 1;
        const kept = await toldFrom(day, (first + index) % 3);
        for (const name of names) {
          forget(day);
          expect([name, kept.get(name)]).toEqual([name, await toldTo(day, name)]);
        }
      }
      day.hall.desk.close();
    }),
    { numRuns: 10 },
  );
  expect(taken).toBeGreaterThan(40);
});

test("what twelve devices at one station are told after a change is read once", async () => {
  const { hall, at } = await walls();
  await at.red.station.enter(entry(hall.idOf(1), leap, jump(2100, 2500)));
  const first = await at.red.station.view({ test: leap, most: 8 });
  const live = await at.red.heat.view({ test: leap });
  // The very same, and not an equal one: nothing was read for it.
  expect(await at.blue.station.view({ test: leap, most: 8 }).then(({ queue }) => queue)).toBe(first.queue);
  expect(await at.blue.heat.view({ test: leap })).toBe(live);
  expect(await at.table.heat.view({ test: leap })).toBe(live);
  hall.desk.close();
});
