import { beforeEach, describe, expect, test } from "vitest";
import type { TestCode } from "../../electron/domain/tests/registry.ts";
import { addPastMark } from "../../electron/store/tables/past-marks.ts";
import { recordAttempt } from "../../electron/store/tables/record.ts";
import { refusalOf, type TestDesk, testDesk } from "./desk.ts";
import { addPeople, answersOf, openDay } from "./people-of-a-day.ts";

let made: TestDesk;
let dayId: number;
let attempts = 0;

beforeEach(async () => {
  made = testDesk();
  dayId = await openDay(made);
  attempts = 0;
});

const overview = () => made.as("organiser").day.overview();
const needs = async () => (await overview()).needs.map(({ sentence: { key }, to }) => [key, to]);

function enter(athleteId: number, test: TestCode, seen: unknown, variant = ""): void {
  attempts += 1;
  const id = `attempt-${attempts}`;
  const at = made.clock.at.toISOString();
  const how = { enteredBy: "QA", note: "", source: "station", at, replaces: null } as const;
  made.desk.store.write(["attempts"], (db) =>
    recordAttempt(db, dayId, { id, athleteId, test, variant, seen, ...how }),
  );
}

const pushUps = (athleteId: number, reps: number) =>
  enter(athleteId, "push-up", { how: "tally", reps, offAtEnd: 0 }, "full");
const jump = (athleteId: number, direction: "cw" | "ccw") =>
  enter(athleteId, "agility", { direction, laps: 7, extra: 0, touches: 0 });

describe("where the day stands", () => {
  test("counts by state, league and test, worked by hand", async () => {
    const [ada = 0, bo = 0, cy = 0, di = 0, ed = 0] = addPeople(
      made,
      ["Ada", "Bo", "Cy", "Di", "Ed", "Flo"].map((name, index) => ({
        name,
        league: index < 4 ? "North Quay" : "Tidewater",
      })),
      dayId,
    );
    const table = made.as("check-in").checkIn;
    await table.admit(answersOf(ada));
    await table.admit(answersOf(bo, { leaveOut: ["agility"] }));
    await table.admit(answersOf(cy));
    await table.noShow({ athleteId: di });
    await table.admit(answersOf(ed));
    made.desk.store.write(["people"], (db) =>
      addPastMark(db, {
        athleteId: ada,
        fingerprint: "push-up/full beatsPerRep=2 bpm=40 missesToStop=3",
        date: "2026-02-01",
        test: "push-up",
        variant: "full",
        value: 20,
      }),
    );
    made.clock.pass(10);
    pushUps(ada, 21);
    pushUps(bo, 15);
    jump(ada, "cw");
    await table.withdraw({ athleteId: ed });

    const told = await overview();
    expect(told.counts).toEqual({ expected: 1, testing: 3, "not-testing": 0, "no-show": 1, withdrawn: 1 });
    expect(told.leagues).toEqual([
      {
        league: "North Quay",
        counts: { expected: 0, testing: 3, "not-testing": 0, "no-show": 1, withdrawn: 0 },
        finished: 0,
      },
      {
        league: "Tidewater",
        counts: { expected: 1, testing: 0, "not-testing": 0, "no-show": 0, withdrawn: 1 },
        finished: 0,
      },
    ]);
    expect(told.tests).toEqual([
      {
        ...{ test: "push-up", done: 2, waiting: 1, later: 0, leftOut: 0, incomplete: 0, bests: 1, firsts: 1 },
        longestWait: "2026-11-14T09:00:00.000Z",
        heats: [],
      },
      {
        ...{ test: "agility", done: 0, waiting: 1, later: 1, leftOut: 1, incomplete: 1, bests: 0, firsts: 0 },
        longestWait: "2026-11-14T09:10:00.000Z",
        heats: [],
      },
      {
        ...{
          test: "vertical",
          done: 0,
          waiting: 1,
          later: 2,
          leftOut: 0,
          incomplete: 0,
          bests: 0,
          firsts: 0,
        },
        longestWait: "2026-11-14T09:10:00.000Z",
        heats: [],
      },
      {
        ...{ test: "core", done: 0, waiting: 0, later: 3, leftOut: 0, incomplete: 0, bests: 0, firsts: 0 },
        longestWait: null,
        heats: [],
      },
      {
        ...{
          test: "endurance",
          done: 0,
          waiting: 0,
          later: 3,
          leftOut: 0,
          incomplete: 0,
          bests: 0,
          firsts: 0,
        },
        longestWait: null,
        heats: [],
      },
    ]);
    const floor = await made.as("organiser").day.floor();
    expect(floor.map(({ who, next, readyAt }) => [who.name, next, readyAt])).toEqual([
      ["Ada", "agility", "2026-11-14T09:15:00.000Z"],
      ["Bo", "vertical", "2026-11-14T09:15:00.000Z"],
      ["Cy", "push-up", "2026-11-14T09:00:00.000Z"],
    ]);
    expect(floor[1]?.tests.map(({ place }) => place)).toEqual([
      "done",
      "leftOut",
      "waiting",
      "later",
      "later",
    ]);
  });

  test("whoever has done or left out everything has finished", async () => {
    const [ada = 0] = addPeople(made, [{ name: "Ada", league: "A" }], dayId);
    await made
      .as("check-in")
      .checkIn.admit(answersOf(ada, { leaveOut: ["agility", "vertical", "core", "endurance"] }));
    expect((await overview()).finished).toBe(0);
    pushUps(ada, 20);
    expect((await overview()).finished).toBe(1);
    expect(await needs()).toEqual([["overview.allFinished", "/day"]]);
  });
});

describe("what needs somebody", () => {
  test("nobody listed, then nobody in, then nothing", async () => {
    expect(await needs()).toEqual([["overview.nobodyListed", "/sheets"]]);
    const [ada = 0] = addPeople(made, [{ name: "Ada", league: "A" }], dayId);
    expect(await needs()).toEqual([["overview.nobodyIn", "/check-in"]]);
    await made.as("check-in").checkIn.admit(answersOf(ada));
    expect(await needs()).toEqual([]);
  });

  test("somebody called who does not come, with how long ago", async () => {
    const [ada = 0] = addPeople(made, [{ name: "Ada", league: "A" }], dayId);
    await made.as("check-in").checkIn.admit(answersOf(ada));
    await made.as("organiser").station.callAthlete({ athleteId: ada, test: "push-up" });
    made.clock.pass(4);
    expect(await needs()).toEqual([]);
    made.clock.pass(3);
    expect((await overview()).needs).toEqual([
      {
        sentence: { key: "test.push-up.called", values: { name: "Ada", bib: 1, minutes: 7 } },
        to: "/station/push-up",
      },
    ]);
  });

  test("a test that is skipped at check-in ends the call to it, and no call to another one", async () => {
    const [ada = 0, bo = 0] = addPeople(
      made,
      ["Ada", "Bo"].map((name) => ({ name, league: "A" })),
      dayId,
    );
    const table = made.as("check-in").checkIn;
    for (const athleteId of [ada, bo]) {
      await table.admit(answersOf(athleteId));
      await made.as("organiser").station.callAthlete({ athleteId, test: "push-up" });
    }
    await table.admit(answersOf(ada, { leaveOut: ["push-up"] }));
    await table.admit(answersOf(bo, { leaveOut: ["core"] }));
    made.clock.pass(7);
    expect((await overview()).needs.map(({ sentence: { values } }) => values?.name)).toEqual(["Bo"]);
  });

  test("one direction of the quadrant jump left lying", async () => {
    const [ada = 0] = addPeople(made, [{ name: "Ada", league: "A" }], dayId);
    await made.as("check-in").checkIn.admit(answersOf(ada, { leaveOut: ["push-up"] }));
    jump(ada, "cw");
    expect(await needs()).toEqual([]);
    made.clock.pass(5);
    expect(await needs()).toEqual([["test.agility.begun", "/station/agility"]]);
    jump(ada, "ccw");
    expect(await needs()).toEqual([]);
  });

  test("minors without a guardian's consent: by name, and as a number when there are many", async () => {
    const crowd = Array.from({ length: 4 }, (_, index) => ({
      name: `Kid ${index}`,
      league: "A",
      birthYear: 2011,
    }));
    const [first = 0, ...others] = addPeople(made, crowd, dayId);
    await made.as("organiser").checkIn.admitAll();
    expect(await needs()).toEqual([["overview.guardians", "/athletes"]]);
    const consents = { board: "bib", share: false, guardianConsent: true } as const;
    await made.as("check-in").people.setConsent({ athleteId: first, ...consents });
    expect(await needs()).toEqual(others.map((id) => ["overview.guardian", `/athletes/${id}`]));
  });
});

describe("how the tests are held", () => {
  test("can be changed until the day opens, and not one field of it after", async () => {
    const other = testDesk();
    const { day } = other.as("organiser");
    await day.create({ date: "2026-11-14", title: "Not yet", parameters: { vertical: { trials: 2 } } });
    await day.setProtocol({ test: "push-up", parameters: { bpm: 50, beatsPerRep: 2, missesToStop: 3 } });
    const [pushUp, , vertical, core] = await day.protocols();
    expect(pushUp).toEqual({
      test: "push-up",
      parameters: { bpm: 50, beatsPerRep: 2, missesToStop: 3 },
      fingerprints: [
        "push-up/full beatsPerRep=2 bpm=50 missesToStop=3",
        "push-up/knee beatsPerRep=2 bpm=50 missesToStop=3",
      ],
      standard: false,
    });
    expect([vertical?.parameters, core?.standard]).toEqual([{ trials: 2 }, true]);
    await day.open();
    const late = day.setProtocol({ test: "core", parameters: { cycle: 240 } });
    expect((await refusalOf(late)).key).toBe("day.frozen");
  });

  test("rest can be changed while the day is held, from three minutes to an hour", async () => {
    await made.as("organiser").day.setRest({ restMinutes: 12 });
    expect((await made.as("organiser").day.current()).day?.restMinutes).toBe(12);
    await expect(made.as("organiser").day.setRest({ restMinutes: 61 })).rejects.toThrow();
    await made.as("organiser").day.setRest({ restMinutes: 3 });
    for (const restMinutes of [0, 2]) {
      await expect(made.as("organiser").day.setRest({ restMinutes })).rejects.toThrow("too_small");
    }
    expect((await made.as("organiser").day.current()).day?.restMinutes).toBe(3);
    expect((await refusalOf(made.as("station").day.setRest({ restMinutes: 1 }))).key).toBe("door.forbidden");
  });

  test("what cannot be held is refused, with the test's own sentence where it has one", async () => {
    const other = testDesk();
    const { day } = other.as("organiser");
    await day.create({ date: "2026-11-14", title: "Not yet" });
    const odd = { rounds: 3, exercises: [{ exercise: "skater-strides", count: 21, sides: 2 }] };
    const refused = [
      await refusalOf(day.setProtocol({ test: "endurance", parameters: odd })),
      await refusalOf(day.setProtocol({ test: "push-up", parameters: { bpm: 0 } })),
      await refusalOf(day.setProtocol({ test: "push-up", parameters: null })),
    ];
    expect(refused.map(({ key }) => key)).toEqual([
      "test.endurance.plausibility.oddCount",
      "day.badParameters",
      "day.badParameters",
    ]);
  });
});

test("the board and the stations see no overview, and only the organiser changes a test", async () => {
  for (const who of ["board", "station"] as const) {
    const { day } = made.as(who);
    for (const call of [day.overview(), day.floor()]) {
      expect((await refusalOf(call)).key).toBe("door.forbidden");
    }
  }
  for (const who of ["board", "station", "check-in"] as const) {
    const call = made.as(who).day.setProtocol({ test: "core", parameters: { cycle: 240 } });
    expect((await refusalOf(call)).key).toBe("door.forbidden");
  }
});
