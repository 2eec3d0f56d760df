import { randomUUID } from "node:crypto";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { recordAttempt } from "../../electron/store/tables/record.ts";
import { refusalOf } from "./desk.ts";
import { answersOf } from "./people-of-a-day.ts";
import { entry, hold, past, reps, type StationDay, stationDay } from "./station-day.ts";

let day: StationDay;
beforeEach(async () => {
  day = await stationDay();
});
afterEach(() => {
  expect(day.faults).toEqual([]);
  day.desk.close();
});

const people = () => day.as("organiser").people;
const by = "qa";

/** Somebody who came a second time under a wrong number: a walk-up, with a result. */
async function double(): Promise<number> {
  const { athleteId: _, ...answers } = answersOf(0);
  const who = { league: "Foundry Town", name: "Ada Rill", number: "77", birthYear: null };
  const { athleteId } = await day.as("check-in").checkIn.walkUp({ ...answers, ...who });
  await day.station.enter(entry(athleteId, "push-up", reps(31)));
  return athleteId;
}
const history = () => people().steps({ of: "identity" });

describe("two records of one person", () => {
  test("are shown with what would be, made one, and taken apart again", async () => {
    const goneId = await double();
    const keptId = day.idOf(1);
    past(day, 1, "push-up", 20, "2026-03-14", "full");
    const before = await people().beforeJoining({ keptId, goneId });
    expect(before).toMatchObject({
      kept: { number: "01", attempts: 0, pastMarks: 1 },
      gone: { number: "77", attempts: 1 },
      ...{ after: { number: "01", name: "Ada Rill" }, blocked: [] },
      notes: [{ key: "join.bothBibs", values: { stays: 1, goes: 7 } }],
    });
    const stepId = randomUUID();
    await people().join({ keptId, goneId, stepId, by });
    await people().join({ keptId, goneId, stepId, by });
    const page = await people().get({ athleteId: keptId });
    expect(page.marks.map(({ mark }) => mark)).toEqual([{ state: "complete", value: 31 }]);
    expect(page.series[0]?.points.map(({ value }) => value)).toEqual([20, 31]);
    expect((await refusalOf(people().get({ athleteId: goneId }))).key).toBe("checkIn.unknown");
    const [step] = await history();
    expect(step).toMatchObject({ kind: "joined", by: "QA", blocked: null, undone: null });
    expect(step?.changes[0]).toMatchObject({ before: { number: "77" }, after: null });

    await people().undo({ stepId, by });
    expect((await people().get({ athleteId: goneId })).marks).toHaveLength(1);
    expect((await people().get({ athleteId: keptId })).marks).toEqual([]);
    expect(await history()).toMatchObject([{ undone: { by: "QA" }, changes: [] }]);
    await people().undo({ stepId, by });
  });

  test("stay one once something depends on it, and that is told", async () => {
    const goneId = await double();
    const stepId = randomUUID();
    await people().join({ keptId: day.idOf(1), goneId, stepId, by });
    day.clock.pass(10);
    await day.station.enter(entry(day.idOf(1), "core", hold(61)));
    expect((await history())[0]?.blocked).toEqual({ key: "steps.tested", values: { name: "Ada Rill" } });
    expect((await refusalOf(people().undo({ stepId, by }))).key).toBe("steps.tested");
  });

  test("with results of one test and day are not made one, and it is said which", async () => {
    const goneId = await double();
    await day.station.enter(entry(day.idOf(1), "push-up", reps(20)));
    const { blocked } = await people().beforeJoining({ keptId: day.idOf(1), goneId });
    expect(blocked).toEqual([{ key: "join.sameTest", values: { test: "push-up", date: "2026-11-14" } }]);
    const refused = await refusalOf(people().join({ keptId: day.idOf(1), goneId, stepId: randomUUID(), by }));
    expect(refused.key).toBe("join.sameTest");
  });

  test("with different imported results of one date are not made one", async () => {
    past(day, 1, "core", 90, "2026-03-14");
    past(day, 2, "core", 95, "2026-03-14");
    const which = { keptId: day.idOf(1), goneId: day.idOf(2) };
    expect((await people().beforeJoining(which)).blocked.map(({ key }) => key)).toEqual(["join.samePast"]);
    expect((await refusalOf(people().beforeJoining({ keptId: 1, goneId: 1 }))).key).toBe("join.same");
  });

  test("an erasure of the one that stayed takes the history of names too", async () => {
    const goneId = await double();
    await people().mend({ ...who(await people().get({ athleteId: goneId })), name: "Ada Quill" });
    await people().join({ keptId: day.idOf(1), goneId, stepId: randomUUID(), by });
    expect(JSON.stringify((await people().held({ athleteId: day.idOf(1) })).changes)).toContain("Ada Quill");
    await people().erase({ erasureId: randomUUID(), athleteId: day.idOf(1), typed: "01", by });
    const told = JSON.stringify(await history());
    expect(told).not.toMatch(/Ada|Quill/);
    expect((await history()).map(({ blocked }) => blocked?.key)).toEqual(["steps.erased", "steps.erased"]);
  });
});

interface Page {
  readonly athleteId: number;
  readonly name: string;
  readonly number: string;
  readonly league: string;
  readonly birthYear: number | null;
  readonly category: "women" | "men" | "open" | null;
}
const who = ({ athleteId, name, number, league, birthYear, category }: Page) => ({
  ...{ athleteId, name, number, league, birthYear, category },
});

test("somebody moves to another league with their history, and back", async () => {
  past(day, 2, "core", 90, "2026-03-14");
  const bo = await people().get({ athleteId: day.idOf(2) });
  await people().mend({ ...who(bo), league: "Mill City" });
  await people().mend({ ...who(bo), league: "Mill City" });
  const [step, ...more] = await history();
  expect(more).toEqual([]);
  expect(step?.changes).toMatchObject([
    { before: { league: "Foundry Town" }, after: { league: "Mill City" } },
  ]);
  expect((await people().get({ athleteId: day.idOf(2) })).series).toHaveLength(1);
  await people().undo({ stepId: String(step?.id), by });
  expect(await people().get({ athleteId: day.idOf(2) })).toEqual(bo);
  expect((await people().list({})).leagues.map(({ name }) => name)).toEqual(["Foundry Town"]);
});

describe("a league", () => {
  const idOf = async (name: string) =>
    (await people().list({})).leagues.find((each) => each.name === name)?.id ?? 0;

  test("is renamed, and gets its name back", async () => {
    const leagueId = await idOf("Foundry Town");
    const asked = { leagueId, name: " Foundry  Town Roller Derby " };
    expect(await people().beforeLeague(asked)).toEqual({ joins: null, athletes: 6, blocked: [] });
    const stepId = randomUUID();
    await people().changeLeague({ ...asked, stepId, by });
    expect((await people().get({ athleteId: day.idOf(1) })).league).toBe("Foundry Town Roller Derby");
    expect((await history())[0]?.changes).toMatchObject([{ before: { league: "Foundry Town" } }]);
    await people().undo({ stepId, by });
    expect(await idOf("Foundry Town")).toBe(leagueId);
  });

  test("is made one with another, but for two with one number", async () => {
    for (const [bib, number] of [
      [3, "03"],
      [4, "02"],
    ] as const) {
      const { athleteId, ...rest } = who(await people().get({ athleteId: day.idOf(bib) }));
      await people().mend({ athleteId, ...rest, league: "Foundry Towne", number });
    }
    const leagueId = await idOf("Foundry Towne");
    const asked = { leagueId, name: "Foundry Town" };
    expect((await people().beforeLeague(asked)).blocked).toMatchObject([
      { key: "leagues.both", values: { first: "Di Stomp", second: "Bo Crank", number: "02" } },
    ]);
    const di = who(await people().get({ athleteId: day.idOf(4) }));
    await people().mend({ ...di, number: "44" });
    const stepId = randomUUID();
    await people().changeLeague({ ...asked, stepId, by });
    expect((await people().list({})).leagues).toHaveLength(1);
    expect((await history())[0]).toMatchObject({
      ...{ kind: "leagues-joined", blocked: null },
      changes: [{ before: { league: "Foundry Towne" }, after: { league: "Foundry Town" } }],
    });
    await people().undo({ stepId, by });
    expect((await people().get({ athleteId: day.idOf(4) })).league).toBe("Foundry Towne");
    // Only the newest step about somebody can be undone; the one before it then can.
    expect((await history())[1]?.blocked).toBeNull();
    expect((await history())[2]?.blocked?.key).toBe("steps.later");
  });
});

test("an attempt id that was used under the other record is known again after it", async () => {
  const goneId = await double();
  const id = randomUUID();
  const given = {
    enteredBy: "QA",
    note: "",
    source: "station",
    replaces: null,
    at: "2026-11-14T09:00:00Z",
  } as const;
  const attempt = { ...given, id, test: "core" as const, variant: "", seen: { held: 5000 } };
  const record = (athleteId: number) =>
    day.desk.store.write([], (db) => recordAttempt(db, day.dayId, { ...attempt, athleteId }).outcome);
  expect(record(goneId)).toBe("added");
  await people().join({ keptId: day.idOf(1), goneId, stepId: randomUUID(), by });
  expect(record(day.idOf(1))).toBe("known");
});
