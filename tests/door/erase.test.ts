import { randomUUID } from "node:crypto";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { topics as all } from "../../electron/store/connection/store.ts";
import { attemptsOfDay } from "../../electron/store/tables/attempts.ts";
import { setCall } from "../../electron/store/tables/calls.ts";
import { marksOfDay } from "../../electron/store/tables/marks.ts";
import { namelessMarks } from "../../electron/store/tables/nameless.ts";
import { dump } from "../store/hall.ts";
import { refusalOf } from "./desk.ts";
import { hallAt, sent, startedHeat } from "./heat-hall.ts";
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

const people = (who: "organiser" | "check-in" = "organiser") => day.as(who).people;

function erasing(bib: number, typed: string, erasureId: string = randomUUID()) {
  return { erasureId, athleteId: day.idOf(bib), typed, by: "QA" };
}

describe("who is erased", () => {
  test("is gone from every list, search, queue, board and count; everybody else is as before", async () => {
    const { station } = day;
    await station.enter(entry(day.idOf(1), "push-up", reps(20)));
    await station.enter(entry(day.idOf(2), "push-up", reps(25)));
    past(day, 2, "push-up", 20, "2026-02-01", "full");
    await people().setConsent({ athleteId: day.idOf(1), board: "name", share: false });
    day.desk.store.write(["calls"], (db) => {
      const at = day.clock.at.toISOString();
      setCall(db, day.dayId, { athleteId: day.idOf(1), test: "agility", at, holder: null });
    });
    const bo = await people().get({ athleteId: day.idOf(2) });
    expect((await people().list({ query: "ada" })).total).toBe(1);
    const shown = await day.as("board").board.view();
    expect(JSON.stringify(shown)).toContain("Ada Rill");
    expect(shown.calls).toHaveLength(1);

    expect(await people().erase(erasing(1, "ada rill"))).toEqual({ notWiped: null });

    expect((await people().list({ query: "ada" })).total).toBe(0);
    expect((await people().list({})).total).toBe(5);
    expect((await day.as("organiser").checkIn.counts()).states.testing).toBe(5);
    const view = await station.view({ test: "push-up" });
    expect(view.recent.map(({ attempt }) => attempt.who.name)).toEqual(["Bo Crank"]);
    expect(view.counts).toEqual({ done: 1, waiting: 4, later: 0, leftOut: 0 });
    const board = await day.as("board").board.view();
    expect(JSON.stringify(board)).not.toContain("Ada");
    expect(board.calls).toEqual([]);
    expect(await people().get({ athleteId: day.idOf(2) })).toEqual(bo);
    expect((await refusalOf(people().get({ athleteId: day.idOf(1) }))).key).toBe("checkIn.unknown");
    const late = station.enter(entry(day.idOf(1), "agility", hold(3)));
    await expect(late).rejects.toThrow();
    expect(namelessMarks(day.desk.store.db)).toEqual([]);
    expect(marksOfDay(day.desk.store.db, day.dayId)).toHaveLength(1);
  });

  test("who agreed to share leaves nameless marks, told before as a number", async () => {
    await day.station.enter(entry(day.idOf(1), "push-up", reps(20)));
    await people().setConsent({ athleteId: day.idOf(1), board: "bib", share: true });
    const before = await people().beforeErasing({ athleteId: day.idOf(1) });
    expect(before).toEqual({
      ...{ days: 1, attempts: 1, pastMarks: 0, nameless: 1, mentions: 0 },
      ...{ blocked: null, removable: false },
      backups: { anew: 0, gone: 0, setAside: 0, away: false },
    });
    await people().erase(erasing(1, "01"));
    const [mark] = namelessMarks(day.desk.store.db);
    expect(mark).toMatchObject({ test: "push-up", value: 20, category: "unknown", ageBand: "unknown" });
    // Nothing of it but the random id was not there before.
    expect(mark?.id).toMatch(/^[0-9a-f-]{36}$/);
  });

  test("the same request again gets the same answer, and erases nobody else", async () => {
    const request = erasing(6, "Flo Dash");
    await people().erase(request);
    // The id of the newest is not given to the next who comes.
    const { athleteId: _, ...answers } = answersOf(0);
    const who = { league: "Foundry Town", name: "Flo Dash", number: "", birthYear: null };
    const { athleteId } = await day.as("check-in").checkIn.walkUp({ ...answers, ...who });
    expect(athleteId).not.toBe(request.athleteId);
    expect(await people().erase(request)).toEqual({ notWiped: null });
    expect((await people().list({})).total).toBe(6);
    expect(await people().erasures()).toEqual([
      { id: request.erasureId, at: day.clock.at.toISOString(), by: "QA", wiped: true },
    ]);
    expect((await refusalOf(people().erase(erasing(6, "Flo Dash")))).key).toBe("checkIn.unknown");
  });

  test("nobody is erased by a slip: the name or the number has to be typed, and initials said", async () => {
    const before = dump(day.desk.store.db);
    for (const typed of ["", "  ", "Ada", "1", "Bo Crank", "02"]) {
      const refused = await refusalOf(people().erase(erasing(1, typed)));
      expect(refused).toEqual({ key: "erase.typed", values: { name: "Ada Rill" } });
    }
    const nobody = people().erase({ ...erasing(1, "01"), by: "12" });
    expect((await refusalOf(nobody)).key).toBe("station.initials");
    expect(dump(day.desk.store.db)).toEqual(before);
    await people().erase(erasing(1, " ÁDA  rill "));
  });

  test("windows are told to read everything again", async () => {
    const heard = new Set<string>();
    day.desk.news.listen(({ topics }) => {
      for (const topic of topics) heard.add(topic);
    });
    await people().erase(erasing(1, "01"));
    expect([...heard].sort()).toEqual([...all].sort());
  });

  test("sheets that wait in memory are dropped with them", async () => {
    const sheet = new Blob(["league,name\nFoundry Town,Ada Rill\n"]).stream();
    const { uploadId } = await day.as("organiser").intake.upload(sheet as never);
    await people().erase(erasing(1, "01"));
    const call = day.as("organiser").intake.keptBackSheet({ uploadId });
    expect((await refusalOf(call)).key).toBe("sheets.gone");
  });

  test.each(["check-in", "station", "board"] as const)(
    "%s may neither erase nor look at it",
    async (role) => {
      const { people: door } = day.as(role);
      await expect(door.erase(erasing(1, "01"))).rejects.toMatchObject({ code: "FORBIDDEN" });
      await expect(door.beforeErasing({ athleteId: 1 })).rejects.toMatchObject({ code: "FORBIDDEN" });
      await expect(door.erasures()).rejects.toMatchObject({ code: "FORBIDDEN" });
      await expect(door.wipeAgain()).rejects.toMatchObject({ code: "FORBIDDEN" });
      await expect(door.held({ athleteId: 1 })).rejects.toMatchObject({ code: "FORBIDDEN" });
    },
  );
});

describe("a heat", () => {
  test("that runs holds whoever stands in it; with it ended, they can be erased and the others stay", async () => {
    const hall = await hallAt("core");
    const heatId = await startedHeat(hall, "core", 2);
    const { people: door } = hall.as("organiser");
    const request = { erasureId: randomUUID(), athleteId: hall.idOf(1), typed: "01", by: "QA" };
    const why = { key: "test.core.inHeat", values: { name: "Ada Rill", lane: 1 } };
    expect(await refusalOf(door.erase(request))).toEqual(why);
    expect((await door.beforeErasing({ athleteId: hall.idOf(1) })).blocked).toEqual(why);

    hall.clock.tick(70_000);
    const stops = [sent(1, "stop", 61_000), sent(2, "stop", 62_000)];
    await hall.heat.tap({ heatId, by: "QA", events: stops });
    await hall.heat.end({ heatId, by: "QA" });
    const bo = attemptsOfDay(hall.desk.store.db, hall.dayId).filter(
      (each) => each.athleteId === hall.idOf(2),
    );
    expect(await door.erase(request)).toEqual({ notWiped: null });
    const after = attemptsOfDay(hall.desk.store.db, hall.dayId);
    expect(after.filter((each) => each.athleteId === hall.idOf(2))).toEqual(bo);
    expect(after.some((each) => each.athleteId === hall.idOf(1))).toBe(false);
    expect(hall.faults).toEqual([]);
    hall.desk.close();
  });

  test("that is being gathered lets them go, and their lane is free", async () => {
    const hall = await hallAt("core");
    const heatId = randomUUID();
    await hall.heat.gather({ test: "core", heatId, lanes: 2, by: "QA" });
    const { people: door } = hall.as("organiser");
    await door.erase({ erasureId: randomUUID(), athleteId: hall.idOf(1), typed: "01", by: "QA" });
    const { heat } = await hall.heat.view({ test: "core" });
    expect(heat?.lane.map(({ lane, who }) => [lane, who.bib])).toEqual([[2, 2]]);
    hall.desk.close();
  });
});
