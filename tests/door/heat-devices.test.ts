import { randomUUID } from "node:crypto";
import fc from "fast-check";
import { expect, test } from "vitest";
import type { JoinedDevice } from "../../electron/domain/devices/place.ts";
import { takenLanes } from "../../electron/store/tables/heat-lanes.ts";
import { cm } from "../lengths.ts";
import { refusalOf } from "./desk.ts";
import { deviceAt } from "./devices-of-a-day.ts";
import { bibsByLane, by, type HeatView, hallAt, liveOf, sent } from "./heat-hall.ts";

/** Two leap walls: each device runs heats of its own from the one queue. */

const leap = "vertical" as const;

async function twoWalls() {
  const hall = await hallAt(leap);
  const devices = { red: deviceAt(hall, "Red phone", leap), blue: deviceAt(hall, "Blue phone", leap) };
  return {
    hall,
    devices,
    red: hall.from(devices.red).heat,
    blue: hall.from(devices.blue).heat,
    table: hall.as("organiser").heat,
  };
}

type Walls = Awaited<ReturnType<typeof twoWalls>>;
const wanted = (lanes: number, heatId: string = randomUUID()) => ({ test: leap, heatId, lanes, by });
const nextBibs = ({ next }: HeatView) => next.map(({ who }) => who.bib);

test("each device calls from the one queue into a heat of its own, and sees what the others hold", async () => {
  const { hall, devices, red, blue, table } = await twoWalls();
  const first = await red.gather(wanted(2));
  const second = await blue.gather(wanted(2));
  const third = await table.gather(wanted(1));
  expect(bibsByLane(await red.view({ test: leap }))).toEqual([1, 2]);
  expect(bibsByLane(await blue.view({ test: leap }))).toEqual([3, 4]);
  expect(bibsByLane(await table.view({ test: leap }))).toEqual([5]);
  for (const caller of [red, blue, table]) expect(nextBibs(await caller.view({ test: leap }))).toEqual([6]);
  const held = (of: JoinedDevice, heatId: string, bibs: number[]) => ({
    ...{ heatId, test: leap, holder: of.id, device: of.name, state: "running", bibs },
  });
  const { others } = await red.view({ test: leap });
  expect(others).toHaveLength(2);
  expect(others).toContainEqual(held(devices.blue, second.heatId, [3, 4]));
  expect(others).toContainEqual({
    ...{ heatId: third.heatId, test: leap, holder: null, device: null, state: "running", bibs: [5] },
  });
  // The table looks at a device's heat, by who holds it.
  const seen = await table.view({ test: leap, holder: devices.red.id });
  expect(liveOf(seen).heatId).toBe(first.heatId);
  expect(bibsByLane(seen)).toEqual([1, 2]);
  hall.desk.close();
});

test("a device touches its own heats alone; so does a table handed over to the station; the organiser all", async () => {
  const { hall, devices, red, blue, table } = await twoWalls();
  const { heatId } = await red.gather(wanted(2));
  const station = hall.as("station", leap).heat;
  const athleteId = hall.idOf(1);
  for (const other of [blue, station]) {
    const tries = [
      other.tap({ heatId, by, events: [sent(1, "reach", 1, { length: cm(210) })] }),
      other.sendBack({ heatId, athleteId }),
      other.move({ heatId, athleteId, to: 2 }),
      other.absent({ heatId, athleteId, id: randomUUID(), by }),
      other.end({ heatId, by, setAside: true }),
      other.callOff({ heatId, by, reason: "Not mine" }),
      other.gather(wanted(4, heatId)),
      other.place({ ...wanted(4, heatId), who: { bib: "3" } }),
      other.view({ test: leap, holder: devices.red.id }),
    ];
    for (const one of tries) expect(await refusalOf(one)).toEqual({ key: "heat.ofOther" });
  }
  expect(bibsByLane(await red.view({ test: leap }))).toEqual([1, 2]);
  // The organiser fills a device's heat under its id, and it stays the device's.
  await table.place({ ...wanted(3, heatId), who: { bib: "3" } });
  expect(bibsByLane(await red.view({ test: leap }))).toEqual([1, 2, 3]);
  await table.end({ heatId, by, setAside: true });
  expect((await red.view({ test: leap })).heat).toBeNull();
  hall.desk.close();
});

test("nobody has two lanes: by hand, by an undo, or by a heat that is run again", async () => {
  const { hall, red, blue } = await twoWalls();
  const { heatId } = await red.gather(wanted(1));
  const other = wanted(1);
  const taken = blue.place({ ...other, who: { bib: "1" } });
  expect(await refusalOf(taken)).toMatchObject({ key: "heat.elsewhere" });
  const aside = sent(1, "aside", 1);
  await red.tap({ heatId, by, events: [aside] });
  await blue.place({ ...other, who: { bib: "1" } });
  const undone = red.undo({ heatId, eventId: aside.id, id: randomUUID(), by });
  expect(await refusalOf(undone)).toMatchObject({ key: "heat.elsewhere" });
  const again = randomUUID();
  await red.callOff({ heatId, by, reason: "Fire alarm", again });
  expect(liveOf(await red.view({ test: leap })).lane).toEqual([]);
  expect(bibsByLane(await blue.view({ test: leap }))).toEqual([1]);
  hall.desk.close();
});

const act = fc.record({
  who: fc.constantFrom("red", "blue", "table"),
  what: fc.constantFrom("gather", "place", "sendBack", "absent", "aside", "undo", "again", "end"),
  bib: fc.integer({ min: 1, max: 6 }),
});
type Act = typeof act extends fc.Arbitrary<infer One> ? One : never;

/** The last tap of each, to be undone. */
type Last = Map<string, { heatId: string; eventId: string }>;

async function take(walls: Walls, { who, what, bib }: Act, last: Last): Promise<void> {
  const caller = walls[who];
  const { heat } = await caller.view({ test: leap });
  const heatId = heat?.heatId ?? randomUUID();
  const athleteId = walls.hall.idOf(bib);
  const lane = heat?.lane.find((each) => each.who.athleteId === athleteId)?.lane ?? 1;
  if (what === "gather") await caller.gather(wanted(2, heat?.allDone ? randomUUID() : heatId));
  if (what === "place") await caller.place({ ...wanted(2, heatId), who: { bib: `${bib}` } });
  if (what === "sendBack") await caller.sendBack({ heatId, athleteId });
  if (what === "absent") await caller.absent({ heatId, athleteId, id: randomUUID(), by });
  if (what === "end") await caller.end({ heatId, by, setAside: true });
  if (what === "again") await caller.callOff({ heatId, by, reason: "Alarm", again: randomUUID() });
  if (what === "aside") {
    const tap = sent(lane, "aside", 1);
    await caller.tap({ heatId, by, events: [tap] });
    last.set(who, { heatId, eventId: tap.id });
  }
  if (what === "undo") await caller.undo({ heatId, eventId: "", ...last.get(who), id: randomUUID(), by });
}

/** In how many heats at once each athlete is held, at most. */
async function lanesHeld({ hall, red, blue, table }: Walls): Promise<number> {
  const views = await Promise.all([red, blue, table].map((each) => each.view({ test: leap })));
  const taken = takenLanes(hall.desk.store.db, hall.dayId);
  const asides = new Set(
    views.flatMap(({ heat }) =>
      (heat?.lane ?? [])
        .filter(({ lane }) => isAside(heat?.events ?? [], lane))
        .map(({ lane }) => `${heat?.heatId} ${lane}`),
    ),
  );
  const held = taken.filter(({ heatId, lane }) => !asides.has(`${heatId} ${lane}`));
  const counts = Map.groupBy(held, ({ athleteId }) => athleteId);
  return Math.max(0, ...[...counts.values()].map(({ length }) => length));
}

/** Read from the taps alone, not by the program's own fold: an "aside" that no undo names. */
function isAside(
  events: readonly { id: string; kind: string; lane: number | null; detail: unknown }[],
  lane: number,
) {
  const undone = events.flatMap(({ kind, detail }) =>
    kind === "undo" ? [(detail as { eventId: string }).eventId] : [],
  );
  return events.some((event) => event.kind === "aside" && event.lane === lane && !undone.includes(event.id));
}

test("property: whatever two devices and the table do in turn, nobody is held in two lanes", async () => {
  let taken = 0;
  await fc.assert(
    fc.asyncProperty(fc.array(act, { minLength: 10, maxLength: 30 }), async (acts) => {
      const walls = await twoWalls();
      const last: Last = new Map();
      for (const each of acts) {
        await take(walls, each, last).then(
          () => {
            taken += 1;
          },
          () => {},
        );
        expect(await lanesHeld(walls)).toBeLessThanOrEqual(1);
      }
      expect(walls.hall.faults).toEqual([]);
      walls.hall.desk.close();
    }),
    { numRuns: 25 },
  );
  // Refusals are fine, but a run in which nothing was taken would show nothing.
  expect(taken).toBeGreaterThan(100);
});
