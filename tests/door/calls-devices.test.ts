import { randomUUID } from "node:crypto";
import { expect, test } from "vitest";
import { placeDevice, removeDevice } from "../../electron/store/tables/devices.ts";
import { refusalOf } from "./desk.ts";
import { deviceAt } from "./devices-of-a-day.ts";
import { bibsByLane, by, hallAt } from "./heat-hall.ts";

/** Whom a device called is its own: other devices of the station leave them alone, until it is gone. */

const leap = "vertical" as const;

async function twoWalls() {
  const hall = await hallAt(leap);
  const devices = { red: deviceAt(hall, "Red phone", leap), blue: deviceAt(hall, "Blue phone", leap) };
  return {
    ...{ hall, devices },
    red: hall.from(devices.red),
    blue: hall.from(devices.blue),
    table: hall.as("organiser"),
    idOf: hall.idOf,
  };
}

const wanted = (lanes: number) => ({ test: leap, heatId: randomUUID(), lanes, by });
type Walls = Awaited<ReturnType<typeof twoWalls>>;

/** Whom each caller sees as called by another device, by bib. */
async function elsewhere(caller: Walls["red"]) {
  const { queue } = await caller.station.view({ test: leap });
  return Object.fromEntries(
    queue.flatMap(({ who, calledElsewhere }) =>
      calledElsewhere === null ? [] : [[who.bib, calledElsewhere]],
    ),
  );
}

test("a device knows whom it called itself and whom another device called, also after a reload", async () => {
  const { hall, red, blue, table, idOf, devices } = await twoWalls();
  await red.station.callNext({ test: leap });
  await blue.station.callAthlete({ athleteId: idOf(3), test: leap });
  await table.station.callAthlete({ athleteId: idOf(4), test: leap });
  expect(await elsewhere(red)).toEqual({ 3: "Blue phone" });
  expect(await elsewhere(blue)).toEqual({ 1: "Red phone" });
  expect(await elsewhere(table)).toEqual({ 1: "Red phone", 3: "Blue phone" });
  // A page that was loaded anew asks with the same token and nothing else.
  expect(await elsewhere(hall.from({ ...devices.red }))).toEqual({ 3: "Blue phone" });
  // The second of two who call the same athlete at once changes nothing.
  await blue.station.callAthlete({ athleteId: idOf(1), test: leap });
  expect(await elsewhere(blue)).toEqual({ 1: "Red phone" });
  hall.desk.close();
});

test("lanes are filled with whom this device or the table called, and never with whom another device called", async () => {
  const { hall, red, blue, table, idOf } = await twoWalls();
  await blue.station.callAthlete({ athleteId: idOf(6), test: leap });
  await table.station.callAthlete({ athleteId: idOf(5), test: leap });
  await red.station.callAthlete({ athleteId: idOf(4), test: leap });
  await red.heat.gather(wanted(3));
  expect(bibsByLane(await red.heat.view({ test: leap })).sort()).toEqual([1, 4, 5]);
  // Whom a lane holds is called by its device, whoever called before.
  expect(await elsewhere(blue)).toEqual({ 1: "Red phone", 4: "Red phone", 5: "Red phone" });
  expect(
    (await red.heat.view({ test: leap })).next.map(({ who, calledElsewhere }) => [who.bib, calledElsewhere]),
  ).toEqual([
    [6, "Blue phone"],
    [2, null],
    [3, null],
  ]);
  await blue.heat.gather(wanted(1));
  expect(bibsByLane(await blue.heat.view({ test: leap }))).toEqual([6]);
  // By hand, somebody who stands at this wall is taken: their call is this device's from then on.
  await table.station.callAthlete({ athleteId: idOf(2), test: leap });
  await blue.station.callAthlete({ athleteId: idOf(3), test: leap });
  await table.heat.place({ ...wanted(1), who: { bib: "3" } });
  expect(await elsewhere(red)).toEqual({ 6: "Blue phone" });
  hall.desk.close();
});

test("nobody is left to call where another device called them all", async () => {
  const { hall, red, blue, idOf } = await twoWalls();
  for (const bib of [1, 2, 3, 4, 5, 6]) await red.station.callAthlete({ athleteId: idOf(bib), test: leap });
  expect(await refusalOf(blue.heat.gather(wanted(2)))).toMatchObject({ key: "station.nobodyWaits" });
  hall.desk.close();
});

test("whom a device called before it was sent away, or had another place, is for the others to take", async () => {
  const { hall, red, blue, devices, idOf } = await twoWalls();
  await red.station.callAthlete({ athleteId: idOf(5), test: leap });
  expect(await elsewhere(blue)).toEqual({ 5: "Red phone" });
  const move = (test: "core" | typeof leap) =>
    hall.desk.store.write([], (db) => placeDevice(db, devices.red.id, { role: "station", test }));
  move("core");
  expect(await elsewhere(blue)).toEqual({});
  move(leap);
  expect(await elsewhere(blue)).toEqual({ 5: "Red phone" });
  hall.desk.store.write([], (db) => removeDevice(db, devices.red.id));
  expect(await elsewhere(blue)).toEqual({});
  await blue.heat.gather(wanted(1));
  expect(bibsByLane(await blue.heat.view({ test: leap }))).toEqual([5]);
  hall.desk.close();
});
