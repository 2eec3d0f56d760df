import { randomUUID } from "node:crypto";
import { expect, test } from "vitest";
import { refusalOf } from "./desk.ts";
import { bringTo, entry, stationDay } from "./station-day.ts";

test("a device hears which of its entries the store lacks, which count, and whose bib is whose", async () => {
  const day = await stationDay();
  await bringTo(day, 1, "core");
  await bringTo(day, 2, "core");
  const [counts, ended] = [
    entry(day.idOf(1), "core", { held: 61_000 }),
    entry(day.idOf(2), "core", { held: 62_000 }),
  ];
  for (const each of [counts, ended]) await day.station.enter({ ...each, sure: true });
  const [one, two] = [counts, ended].map(({ attempts }) => attempts[0]?.id ?? "");
  await day.station.void({ attemptId: two ?? "", reason: "Slip", by: "QA" });
  const never = randomUUID();
  const told = await day.station.lacks({
    test: "core",
    attemptIds: [one ?? "", two ?? "", never],
    athleteIds: [day.idOf(1), day.idOf(2), 999],
  });
  expect(told).toEqual({
    attemptIds: [never],
    standing: [one],
    bibs: [
      { athleteId: day.idOf(1), bib: 1 },
      { athleteId: day.idOf(2), bib: 2 },
    ],
    // One that the store never had may have come after the backup: nobody forgets it.
    deleted: [],
  });
});

test("who was deleted is told by number alone, so that a device forgets them", async () => {
  const day = await stationDay();
  const athleteId = day.idOf(3);
  const gone = { erasureId: randomUUID(), athleteId, typed: "Cy Loop", by: "QA" };
  await day.as("organiser").people.erase(gone);
  const told = await day.station.lacks({
    test: "core",
    attemptIds: [],
    athleteIds: [athleteId, day.idOf(1), 999],
  });
  expect(told.deleted).toEqual([athleteId]);
  expect(told.bibs).toEqual([{ athleteId: day.idOf(1), bib: 1 }]);
});

test("a station asks about its own test alone", async () => {
  const day = await stationDay();
  const core = day.as("station", "core").station;
  const asked = { attemptIds: [], athleteIds: [] };
  expect((await core.lacks({ ...asked, test: "core" })).deleted).toEqual([]);
  expect((await refusalOf(core.lacks({ ...asked, test: "agility" }))).key).toBe("door.otherStation");
});
