import fc from "fast-check";
import { beforeEach, describe, expect, test } from "vitest";
import { leaguesLike } from "../../electron/api/intake/leagues.ts";
import { type Athlete, allAthletes } from "../../electron/store/tables/athletes.ts";
import { addPastMark, pastMarksOf } from "../../electron/store/tables/past-marks.ts";
import { refusalOf, type TestDesk, testDesk } from "./desk.ts";
import { bring, holdDay, look, type Preview } from "./sheets.ts";

let table: TestDesk;
beforeEach(async () => {
  table = testDesk();
  holdDay(table);
  await sheet(
    "Lantern Bay,Ada Rill,7,1990",
    "Lantern Bay,Cy Loom,12,1995",
    "Mill City,Bo Crank,5,1991",
  ).take();
  note("Ada Rill", 21);
  note("Cy Loom", 33);
});

const header = "league,name,number,birth_year";
type Answers = Record<string, number | "new">;

/** A roster: looked at with answers, or taken with them. */
function sheet(...rows: string[]) {
  const uploadId = bring(table, [header, ...rows, ""].join("\n"));
  return {
    look: async (answers: Answers = {}) => look(table, { uploadId: await uploadId, kind: "roster", answers }),
    take: async (answers: Answers = {}) =>
      table.as("organiser").intake.take({ uploadId: await uploadId, kind: "roster", answers }),
  };
}

const all = () => allAthletes(table.desk.store.db);
function named(name: string): Athlete {
  const found = all().find((each) => each.name === name);
  if (found === undefined) throw new Error(`${name} is not there.`);
  return found;
}
/** An earlier result by which a person's history is known again. */
function note(name: string, value: number): void {
  const mark = { fingerprint: "x", date: "2026-01-01", test: "push-up" as const, variant: "full", value };
  table.desk.store.write(["people"], (db) => addPastMark(db, { ...mark, athleteId: named(name).id }));
}
const history = (name: string) => pastMarksOf(table.desk.store.db, named(name).id).map(({ value }) => value);
const only = ({ questions }: Preview) => {
  expect(questions).toHaveLength(1);
  return questions[0] as Preview["questions"][number];
};

describe("a number that belongs to somebody else", () => {
  const row = "Lantern Bay,Nova Pike,7,1999";

  test("is asked about, and nothing is imported before it is answered", async () => {
    const asked = only(await sheet(row).look());
    expect(asked).toMatchObject({
      about: "person",
      said: { name: "Nova Pike", number: "7", birthYear: 1999 },
      candidates: [{ name: "Ada Rill", number: "7", birthYear: 1990 }],
      ...{ mayBeNew: true, takesNew: true, loses: "Ada Rill", lines: [2] },
    });
    const refused = await refusalOf(sheet(row).take());
    expect(refused).toMatchObject({ key: "sheets.whoIsWho", values: { count: 1 } });
    expect(all()).toHaveLength(3);
  });

  test("another person gets the number; the first keeps all results and has none", async () => {
    const { id } = only(await sheet(row).look());
    const preview = await sheet(row).look({ [id]: "new" });
    expect(preview.questions).toEqual([]);
    expect(preview.rows[0]?.unusual).toMatchObject({ key: "sheets.row.losesNumber" });
    await sheet(row).take({ [id]: "new" });
    expect(named("Ada Rill").number).toBe("");
    expect(named("Nova Pike")).toMatchObject({ number: "7", birthYear: 1999 });
    expect(history("Ada Rill")).toEqual([21]);
    expect(history("Nova Pike")).toEqual([]);
    // The same again asks nothing and changes nothing.
    expect((await sheet(row).take()).counts).toMatchObject({ known: 1, new: 0, changed: 0 });
  });

  test("the same person under another name keeps the history", async () => {
    const { id } = only(await sheet(row).look());
    await sheet(row).take({ [id]: 0 });
    expect(history("Nova Pike")).toEqual([21]);
    expect(all()).toHaveLength(3);
  });

  test("an answer holds only for what was asked: after a change in between it is asked again", async () => {
    const { id } = only(await sheet(row).look());
    const { id: athleteId, ...ada } = named("Ada Rill");
    await table.as("organiser").people.mend({ ...ada, athleteId, name: "Nova Pyke" });
    expect((await refusalOf(sheet(row).take({ [id]: 0 }))).key).toBe("sheets.whoIsWho");
  });

  test("a row may be left out instead", async () => {
    const uploadId = await bring(table, `${header}\n${row}\nLantern Bay,Juno Reed,8,\n`);
    const { counts } = await table.as("organiser").intake.take({ uploadId, kind: "roster", leftOut: [2] });
    expect(counts).toMatchObject({ new: 1 });
    expect(named("Ada Rill").number).toBe("7");
  });
});

test("a name with another number is asked about; the numbers of two can be swapped", async () => {
  const rows = ["Lantern Bay,Ada Rill,12,1990", "Lantern Bay,Cy Loom,7,1995"];
  const first = (await sheet(...rows).look()).questions[0];
  expect(first?.candidates.map(({ name }) => name)).toEqual(["Cy Loom", "Ada Rill"]);
  const answers = { [String(first?.id)]: 1 };
  expect((await sheet(...rows).look(answers)).questions).toEqual([]);
  await sheet(...rows).take(answers);
  expect([named("Ada Rill").number, named("Cy Loom").number]).toEqual(["12", "7"]);
  expect([history("Ada Rill"), history("Cy Loom")]).toEqual([[21], [33]]);
});

test("a name from another league is asked about: it may have moved, and keeps its history then", async () => {
  const row = "Mill City,Cy Loom,44,";
  const { id, candidates } = only(await sheet(row).look());
  expect(candidates).toMatchObject([{ league: "Lantern Bay", number: "12" }]);
  await sheet(row).take({ [id]: 0 });
  expect(named("Cy Loom")).toMatchObject({ league: "Mill City", number: "44", birthYear: 1995 });
  expect(history("Cy Loom")).toEqual([33]);
  // A known year of birth that is another says by itself that it is somebody else.
  expect((await sheet("Mill City,Ada Rill,46,2001").look()).questions).toEqual([]);
});

test("a league spelt otherwise is asked about once for all of its rows", async () => {
  const rows = ["Lantern Bay Roller Derby,Ada Rill,7,1990", "Lantern Bay Roller Derby,Pia Moss,3,"];
  const { id, about, candidates, lines } = only(await sheet(...rows).look());
  expect([about, candidates[0]?.league, lines]).toEqual(["league", "Lantern Bay", [2, 3]]);
  const { counts } = await sheet(...rows).take({ [id]: 0 });
  expect(counts).toMatchObject({ known: 1, new: 1 });
  expect(named("Pia Moss").league).toBe("Lantern Bay");
  const other = await sheet("Lantern Bye,Uma Fox,9,").look();
  await sheet("Lantern Bye,Uma Fox,9,").take({ [only(other).id]: "new" });
  expect(named("Uma Fox").league).toBe("Lantern Bye");
});

test("two names with one number in one sheet are told apart, not called the same skater", async () => {
  const { keptBack } = await sheet("Mill City,Ida Fell,8,", "Mill City,Uma Fox,8,").look();
  expect(keptBack).toMatchObject([
    { line: 3, field: "number", reason: { key: "sheets.row.numberTwice", values: { other: "Ida Fell" } } },
  ]);
});

test("one name with two numbers in one sheet is asked about", async () => {
  const asked = only(await sheet("Mill City,Ida Fell,8,", "Mill City,Ida Fell,80,").look());
  expect(asked).toMatchObject({ line: 2, lines: [3], candidates: [], mayBeNew: true });
});

test("past results under a number with another name wait for an answer, once for all rows of that person", async () => {
  const rows = "league,number,name,date,test,variant,mark\n";
  const nova = "Lantern Bay,7,Nova Pike,2026-02-01";
  const text = `${rows}${nova},core,,60\n${nova},push-up,full,30\n`;
  const uploadId = await bring(table, text);
  const asked = only(await look(table, { uploadId }));
  expect(asked).toMatchObject({ lines: [2, 3], takesNew: false });
  const take = (answer: Answers[string]) =>
    table.as("organiser").intake.take({ uploadId, kind: "past", answers: { [asked.id]: answer } });
  expect((await take("new")).keptBack).toMatchObject([
    { reason: { key: "sheets.row.somebodyElse" } },
    { reason: { key: "sheets.row.somebodyElse" } },
  ]);
  expect(history("Ada Rill")).toEqual([21]);
  await take(0);
  expect(history("Ada Rill")).toHaveLength(3);
});

test.each([
  ["Lantern Bay", "Lantern Bay Roller Derby", true],
  ["Lantern Bye", "Lantern Bay", true],
  ["LBRD", "Lantern Bay Roller Derby", true],
  ["Lantern Bay A", "Lantern Bay B", false],
  ["League 1", "League 2", false],
  ["Mill City", "Lantern Bay", false],
  ["Bay City Roller Derby", "Lantern Bay Roller Derby", false],
])("%s may be %s: %s", (text, known, isLike) => {
  expect(leaguesLike(text, [known])).toEqual(isLike ? [known] : []);
  expect(leaguesLike(known, [text])).toEqual(isLike ? [text] : []);
});

const name = fc.constantFrom("Ada Rill", "Cy Loom", "Nova Pike", "ada  rill");
const number = fc.constantFrom("", "7", "12", "07");
const year = fc.constantFrom("", "1990", "1995");
const league = fc.constantFrom("Lantern Bay", "Mill City", "Lantern Bay Rollers");
const roster = fc.array(
  fc.tuple(league, name, number, year).map((cells) => cells.join(",")),
  { minLength: 1, maxLength: 5 },
);

function hasNameWithTwoNumbers(rows: readonly string[]): boolean {
  const cells = rows.map((row) => row.toLowerCase().replace(/\s+/g, " ").split(","));
  return cells.some(([, is, has]) => cells.some(([, other, its]) => other === is && its !== has));
}

test("property: whatever a roster says, without an answer no history changes its person", async () => {
  await fc.assert(
    fc.asyncProperty(roster, async (rows) => {
      table = testDesk();
      holdDay(table);
      await sheet("Lantern Bay,Ada Rill,7,1990", "Lantern Bay,Cy Loom,12,1995").take();
      note("Ada Rill", 21);
      note("Cy Loom", 33);
      const before = all().map(({ id, name: is }) => ({ id, is: is.toLowerCase().replace(/\s+/g, " ") }));
      const uploadId = await bring(table, [header, ...rows, ""].join("\n"));
      await table.as("organiser").intake.take({ uploadId, kind: "roster", unanswered: "keepBack" });
      for (const { id, is } of before) {
        const now = all().find((each) => each.id === id);
        expect(now?.name.toLowerCase().replace(/\s+/g, " ")).toBe(is);
        expect(now?.league).toBe("Lantern Bay");
        expect(now?.birthYear).toBe(is === "ada rill" ? 1990 : 1995);
        expect(now?.number).toBe(is === "ada rill" ? "7" : "12");
      }
      table.desk.close();
    }),
    { numRuns: 60 },
  );
});

test("property: with any answers, every person of before is still there with their own results alone", async () => {
  await fc.assert(
    fc.asyncProperty(roster, fc.array(fc.nat(3), { minLength: 8, maxLength: 8 }), async (rows, chosen) => {
      table = testDesk();
      holdDay(table);
      await sheet("Lantern Bay,Ada Rill,7,1990", "Lantern Bay,Cy Loom,12,1995").take();
      note("Ada Rill", 21);
      note("Cy Loom", 33);
      const ids = [named("Ada Rill").id, named("Cy Loom").id];
      const answers: Answers = {};
      for (const pick of chosen) {
        const [open] = (await sheet(...rows).look(answers)).questions;
        if (open === undefined) break;
        const choices = [...open.candidates.keys(), ...(open.mayBeNew ? (["new"] as const) : [])];
        const answer = choices[pick % choices.length];
        if (answer === undefined) break;
        answers[open.id] = answer;
      }
      const uploadId = await bring(table, [header, ...rows, ""].join("\n"));
      const said = { uploadId, kind: "roster" as const, answers };
      await table.as("organiser").intake.take({ ...said, unanswered: "keepBack" });
      const { db } = table.desk.store;
      expect(ids.map((id) => pastMarksOf(db, id).map(({ value }) => value))).toEqual([[21], [33]]);
      const again = await table.as("organiser").intake.take({ ...said, unanswered: "keepBack" });
      // One name with two numbers may be two people, and the answers of before were about other ones: it can be asked anew.
      if (!hasNameWithTwoNumbers(rows)) expect(again.counts.new).toBe(0);
      table.desk.close();
    }),
    { numRuns: 60 },
  );
});
