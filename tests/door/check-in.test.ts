import { beforeEach, describe, expect, test } from "vitest";
import type { TestCode } from "../../electron/domain/tests/registry.ts";
import { testCodes } from "../../electron/domain/tests/registry.ts";
import { allRows, firstRow } from "../../electron/store/connection/database.ts";
import { recordAttempt } from "../../electron/store/tables/record.ts";
import { refusalOf, type TestDesk, testDesk } from "./desk.ts";
import { addPeople, answersOf, openDay } from "./people-of-a-day.ts";

let made: TestDesk;
let dayId: number;
let ada: number;
let bo: number;
let kid: number;

beforeEach(async () => {
  made = testDesk();
  dayId = await openDay(made);
  [ada = 0, bo = 0, kid = 0] = addPeople(
    made,
    [
      { league: "North Quay", name: "Ada Mant", number: "7", birthYear: 1990 },
      { league: "Tidewater Wheels", name: "Bo Ulder", number: "7" },
      { league: "North Quay", name: "Kid Dynamo", number: "12", birthYear: 2010 },
    ],
    dayId,
  );
});

const table = () => made.as("check-in").checkIn;
const personOf = (athleteId: number) => table().person({ athleteId });

function measure(athleteId: number): void {
  made.desk.store.write(["attempts"], (db) =>
    recordAttempt(db, dayId, {
      id: `attempt-${athleteId}`,
      athleteId,
      test: "push-up",
      variant: "full",
      seen: { how: "tally", reps: 20, offAtEnd: 0 },
      enteredBy: "QA",
      note: "",
      source: "station",
      at: made.clock.at.toISOString(),
      replaces: null,
    }),
  );
}

describe("checking in", () => {
  test("gives the next free bib, keeps the outcome and the consents", async () => {
    const admitted = await table().admit(
      answersOf(ada, { leaveOut: ["vertical"], board: "name", share: true, category: "women" }),
    );
    expect(admitted).toEqual({ athleteId: ada, name: "Ada Mant", state: "testing", bib: 1 });
    expect(await personOf(ada)).toEqual({
      athleteId: ada,
      name: "Ada Mant",
      number: "7",
      league: "North Quay",
      birthYear: 1990,
      category: "women",
      mayBeUnder18: false,
      guardianConsent: false,
      board: "name",
      share: true,
      asked: true,
      state: "testing",
      bib: 1,
      leftOut: ["vertical"],
      freeBib: 2,
      measured: false,
    });
  });

  test("takes a bib that was scanned, and the next free one fills the gap below it", async () => {
    expect((await table().admit(answersOf(ada, { bib: 27 }))).bib).toBe(27);
    expect((await table().admit(answersOf(bo))).bib).toBe(1);
  });

  test("the same again changes nothing, also when the first answer was lost", async () => {
    const first = await table().admit(answersOf(ada));
    const since = () => firstRow(made.desk.store.db, "SELECT since FROM entrant WHERE bib = 1");
    const before = since();
    made.clock.pass(3);
    expect(await table().admit(answersOf(ada))).toEqual(first);
    expect(since()).toEqual(before);
  });

  test("again with another answer changes the answer and keeps the bib", async () => {
    await table().admit(answersOf(ada, { bib: 9, leaveOut: ["core", "vertical"] }));
    await table().admit(answersOf(ada, { leaveOut: ["core"], board: "hidden" }));
    expect(await personOf(ada)).toMatchObject({ bib: 9, leftOut: ["core"], board: "hidden" });
  });

  test("all five left out: here, not testing, and no bib is used up", async () => {
    const admitted = await table().admit(answersOf(ada, { leaveOut: [...testCodes] }));
    expect(admitted).toMatchObject({ state: "not-testing", bib: null });
    expect(await personOf(ada)).toMatchObject({ leftOut: [], freeBib: 1 });
  });

  test("who tests is asked about board and sharing; who does not test need not be", async () => {
    const refused = await refusalOf(table().admit(answersOf(ada, { share: null })));
    expect(refused.key).toBe("checkIn.consents");
    await table().admit(answersOf(ada, { leaveOut: [...testCodes], board: null, share: null }));
    expect(await personOf(ada)).toMatchObject({ board: "bib", share: false, asked: false });
  });

  test("whoever has been measured cannot leave everything out", async () => {
    await table().admit(answersOf(ada));
    measure(ada);
    const refused = await refusalOf(table().admit(answersOf(ada, { leaveOut: [...testCodes] })));
    expect(refused.key).toBe("checkIn.alreadyMeasured");
  });

  test("waits until the day is open", async () => {
    const other = testDesk();
    await other.as("organiser").day.create({ date: "2026-11-14", title: "Not yet" });
    const [id = 0] = addPeople(other, [{ league: "A", name: "B" }], 1);
    expect((await refusalOf(other.as("check-in").checkIn.admit(answersOf(id)))).key).toBe("day.notOpen");
    expect((await other.as("check-in").checkIn.person({ athleteId: id })).state).toBe("expected");
  });
});

describe("bibs", () => {
  test("one in use is refused with whose it is and the next free one, and nothing is changed", async () => {
    await table().admit(answersOf(ada, { bib: 1 }));
    expect(await refusalOf(table().admit(answersOf(bo, { bib: 1, board: "name" })))).toEqual({
      key: "checkIn.bibTaken",
      values: { bib: 1, name: "Ada Mant", free: 2 },
    });
    expect(await personOf(bo)).toMatchObject({ state: "expected", bib: null, board: "bib", asked: false });
  });

  test("two windows give the same bib at once: one has it, the other gets the sentence", async () => {
    const answers = await Promise.all([ada, bo].map((id) => postAdmit(made, answersOf(id, { bib: 5 }))));
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 409]);
    const refused = answers.find(({ status }) => status === 409);
    expect(await refused?.text()).toContain("Ada Mant has bib 5. The next free one is 1.");
  });

  test.each([0, -1, 1.5, 10_000, Number.MAX_SAFE_INTEGER])("%s is no bib", async (bib) => {
    expect((await refusalOf(table().admit(answersOf(ada, { bib })))).key).toBe("checkIn.badBib");
  });
});

function postAdmit({ handle }: TestDesk, body: unknown): Promise<Response> {
  const request = new Request("app://desk/trpc/checkIn.admit", {
    method: "POST",
    headers: { "content-type": "application/json" },
    body: JSON.stringify(body),
  });
  return handle(request, "organiser");
}

describe("somebody who may be under 18", () => {
  test("is refused without a guardian's consent, with what to do", async () => {
    expect(await refusalOf(table().admit(answersOf(kid)))).toEqual({
      key: "checkIn.guardian",
      values: { name: "Kid Dynamo" },
    });
    await table().admit(answersOf(kid, { guardianConsent: true }));
    expect(await personOf(kid)).toMatchObject({ state: "testing", guardianConsent: true });
  });

  test("turns 18 this year: asked all the same, for only the year is known", async () => {
    await refusalOf(table().admit(answersOf(ada, { birthYear: 2008 })));
    expect((await table().admit(answersOf(ada, { birthYear: 2007 }))).state).toBe("testing");
  });

  test("may be here without testing, whatever the guardian says", async () => {
    expect((await table().admit(answersOf(kid, { leaveOut: [...testCodes] }))).state).toBe("not-testing");
  });

  test.each([1825, 2024, 3000])("%s is nobody's year of birth here", async (birthYear) => {
    expect((await refusalOf(table().admit(answersOf(bo, { birthYear })))).key).toBe("checkIn.badBirthYear");
  });
});

describe("walk-ups", () => {
  const walkUp = (who: { name: string; number?: string; league?: string }, bib: number | null = null) => {
    const { athleteId: _, ...answers } = answersOf(0, { bib });
    return table().walkUp({ league: "North Quay", number: "", ...answers, birthYear: null, ...who });
  };

  test("a new person of a new league is added and checked in, once", async () => {
    const first = await walkUp({ name: "  Drop Inn ", number: "404", league: "Far Away" });
    expect(first).toMatchObject({ name: "Drop Inn", bib: 1, state: "testing" });
    expect(await walkUp({ name: "drop inn", number: "404", league: "far away" })).toEqual(first);
    expect((await made.as("organiser").people.list({ query: "drop inn" })).total).toBe(1);
  });

  test("the same number in another league is another person", async () => {
    const { athleteId } = await walkUp({ name: "Sev Enth", number: "7", league: "Far Away" });
    expect([ada, bo]).not.toContain(athleteId);
  });

  test("somebody known is found, not doubled", async () => {
    expect((await walkUp({ name: "ada mant", number: "7" })).athleteId).toBe(ada);
  });

  test("a number of somebody else of that league is refused with the name", async () => {
    expect(await refusalOf(walkUp({ name: "Some Body", number: "7" }))).toEqual({
      key: "checkIn.numberTaken",
      values: { number: "7", league: "North Quay", name: "Ada Mant" },
    });
  });

  test.each([
    [{ name: " " }, "checkIn.nameMissing"],
    [{ name: "A", league: "" }, "checkIn.leagueMissing"],
    [{ name: "A", number: "12a" }, "checkIn.badNumber"],
    [{ name: "A", number: "12345" }, "checkIn.badNumber"],
  ])("%j is refused: %s", async (who, key) => {
    expect((await refusalOf(walkUp(who))).key).toBe(key);
  });

  test("a bib in use adds nobody", async () => {
    await table().admit(answersOf(ada, { bib: 3 }));
    await refusalOf(walkUp({ name: "Drop Inn", league: "Far Away" }, 3));
    expect((await made.as("organiser").people.list({ query: "drop inn" })).total).toBe(0);
  });
});

describe("not coming, stopping, taking back", () => {
  test("no-show and back", async () => {
    await table().noShow({ athleteId: bo });
    await table().noShow({ athleteId: bo });
    expect((await table().counts()).states["no-show"]).toBe(1);
    expect(await table().undo({ athleteId: bo })).toEqual({ state: "expected" });
  });

  test("whoever came is no no-show", async () => {
    await table().admit(answersOf(ada));
    expect((await refusalOf(table().noShow({ athleteId: ada }))).key).toBe("checkIn.isHere");
  });

  test("whoever was a no-show and comes late is checked in", async () => {
    await table().noShow({ athleteId: bo });
    expect((await table().admit(answersOf(bo))).state).toBe("testing");
  });

  test("undo frees the bib, forgets what is left out, and puts back what was known", async () => {
    const { board, share, guardianConsent, asked, birthYear, category } = await personOf(ada);
    await table().admit(answersOf(ada, { leaveOut: ["core"], board: "name", share: true, birthYear: 1999 }));
    const before = { board, share, guardianConsent, asked, birthYear, category };
    await table().undo({ athleteId: ada, before });
    expect(await personOf(ada)).toMatchObject({ state: "expected", bib: null, leftOut: [], ...before });
    expect(await table().undo({ athleteId: ada })).toEqual({ state: "expected" });
    expect((await table().admit(answersOf(bo))).bib).toBe(1);
  });

  test("undo is refused once attempts stand; withdrawing keeps bib and marks, and can be taken back", async () => {
    await table().admit(answersOf(ada));
    measure(ada);
    expect((await refusalOf(table().undo({ athleteId: ada }))).key).toBe("checkIn.undoMeasured");
    await table().withdraw({ athleteId: ada });
    expect(await personOf(ada)).toMatchObject({ state: "withdrawn", bib: 1, measured: true });
    expect(await table().undo({ athleteId: ada })).toEqual({ state: "testing" });
    expect(await personOf(ada)).toMatchObject({ state: "testing", bib: 1 });
  });

  test("whoever is not on the list cannot be marked", async () => {
    const [stranger = 0] = addPeople(made, [{ league: "Away", name: "Stranger" }], null);
    for (const act of [table().noShow, table().withdraw, table().undo]) {
      expect((await refusalOf(act({ athleteId: stranger }))).key).toBe("checkIn.notListed");
    }
    expect((await refusalOf(table().admit(answersOf(9999)))).key).toBe("checkIn.unknown");
    expect((await table().admit(answersOf(stranger))).state).toBe("testing");
  });
});

describe("everybody at once, for a rehearsal", () => {
  test("in the order of the list, around the bibs that are given, saying whose guardian to ask", async () => {
    await table().admit(answersOf(bo, { bib: 2 }));
    expect(await made.as("organiser").checkIn.admitAll()).toEqual({
      admitted: 2,
      askGuardian: [{ athleteId: kid, name: "Kid Dynamo", league: "North Quay", number: "12" }],
    });
    expect(await personOf(ada)).toMatchObject({ state: "testing", bib: 1, asked: false, share: false });
    expect(await personOf(kid)).toMatchObject({ state: "testing", bib: 3, guardianConsent: false });
    expect(await made.as("organiser").checkIn.admitAll()).toEqual({ admitted: 0, askGuardian: [] });
  });
});

describe("who may", () => {
  const everything = (who: "station" | "board") => {
    const { checkIn, people } = made.as(who);
    const { athleteId: _, ...answers } = answersOf(ada);
    return {
      search: () => checkIn.search({ query: "" }),
      person: () => checkIn.person({ athleteId: ada }),
      admit: () => checkIn.admit(answersOf(ada)),
      walkUp: () => checkIn.walkUp({ league: "A", name: "B", number: "", ...answers, birthYear: null }),
      noShow: () => checkIn.noShow({ athleteId: ada }),
      withdraw: () => checkIn.withdraw({ athleteId: ada }),
      undo: () => checkIn.undo({ athleteId: ada }),
      counts: () => checkIn.counts(),
      admitAll: () => checkIn.admitAll(),
      list: () => people.list({}),
      get: () => people.get({ athleteId: ada }),
      setConsent: () => people.setConsent({ athleteId: ada, board: "name", share: true }),
    };
  };

  test.each(["station", "board"] as const)("the %s may nothing of this", async (who) => {
    for (const call of Object.values(everything(who))) {
      expect((await refusalOf(call())).key).toBe("door.forbidden");
    }
  });

  test("the table may not check everybody in at once", async () => {
    expect((await refusalOf(table().admitAll())).key).toBe("door.forbidden");
  });
});

test("answers are never stored: the store has no place for them, and extra fields don't pass the door", async () => {
  const answers = { injury: "canary-injury", pregnant: true, answers: { chestPain: "canary-chest" } };
  const leaveOut: TestCode[] = ["endurance"];
  expect((await postAdmit(made, { ...answersOf(ada, { leaveOut }), ...answers })).status).toBe(200);
  const { db } = made.desk.store;
  const tables = allRows<{ name: string }>(db, "SELECT name FROM sqlite_schema WHERE type = 'table'");
  for (const { name } of tables) {
    const rows = allRows(db, `SELECT * FROM "${name}"`);
    expect(JSON.stringify(rows)).not.toContain("canary");
    for (const column of allRows<{ name: string }>(db, `PRAGMA table_info("${name}")`)) {
      expect(column.name).not.toMatch(/injur|ill|pain|faint|pregnan|clinic|answer|health|warm|bout/i);
    }
  }
  const kept = allRows(db, "SELECT kind, reason FROM left_out");
  expect(kept).toEqual([{ kind: "readiness", reason: "" }]);
});
