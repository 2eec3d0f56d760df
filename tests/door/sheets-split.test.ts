import { unzipSync } from "fflate";
import Papa from "papaparse";
import { expect, test } from "vitest";
import { writeSheet } from "../../electron/sheets/write.ts";
import { testDesk } from "./desk.ts";
import { bench, usual } from "./rehearsing.ts";
import { bring, take } from "./sheets.ts";

// Source: OWASP community pages, "CSV Injection", as in tests/unit/sheets/split.test.ts.
const wouldRun = /^[=+\-@\t\r]/;

/** Names that are harmless as one cell and run where a reader splits them. Written by hand: nothing is made harmless. */
const names = ["x;=1+1;y", 'x";=HYPERLINK("http://a.example")', "z\t@SUM(1)", "a,+1+1", "q;-1+1", "Ann"];
const league = "Foundry;=2+2";

const roster = Papa.unparse([
  ["odd", "league", "name", "number"],
  ...names.map((name, index) => ["-2", league, name, String(index + 1)]),
  ["-2", "5+1;=3+3", "", "9"],
  ["-2", league, "b;=4+4", "number;=5+5"],
]);
const results = Papa.unparse([
  ["league", "number", "test", "reps", "off_at_end", "note"],
  ...names.map((_name, index) => [league, String(index + 1), "push-up", String(20 + index), "0", "n;=6+6"]),
  [league, "77;=7+7", "push-up", "20", "0", ""],
]);

function risky(text: string): string[] {
  const cells = [",", ";", "\t"].flatMap((delimiter) =>
    Papa.parse<string[]>(text, { delimiter }).data.flat(),
  );
  // Numbers that are ours may have a minus; nothing may follow them.
  return cells.filter((cell) => wouldRun.test(cell) && !/^-\d+(\.\d+)?$/.test(cell));
}

function sheetsIn(zip: Uint8Array): [name: string, text: string][] {
  return Object.entries(unzipSync(zip))
    .filter(([name]) => name.endsWith(".csv"))
    .map(([name, bytes]) => [name, Buffer.from(bytes).toString()]);
}

test("no sheet of a day runs a name, whichever sign a spreadsheet splits at", async () => {
  const table = testDesk();
  const organiser = table.as("organiser");
  await organiser.day.create({ date: "2026-11-14", title: "t;=1" });
  const { dayId } = await organiser.day.open();
  const uploadId = await bring(table, roster);
  expect((await organiser.intake.take({ uploadId, kind: "roster" })).counts).toMatchObject({
    new: names.length,
    keptBack: 2,
  });
  await organiser.checkIn.admitAll();
  await take(table, "results", results);
  await organiser.day.close({ dayId });
  const { bytes } = await organiser.summary.zip({ dayId, leagueId: null });
  const files = (await organiser.bundle.preview({ dayId }))?.files ?? [];
  const sheets = [
    ...sheetsIn(Buffer.from(bytes, "base64")),
    ...files.filter(({ name }) => name.endsWith(".csv")).map(({ name, text }) => [name, text] as const),
    ["kept-back.csv", (await organiser.intake.keptBackSheet({ uploadId })).text] as const,
  ];
  expect(sheets.length).toBeGreaterThan(8);
  expect(sheets.flatMap(([name, text]) => risky(text).map((cell) => [name, cell]))).toEqual([]);
  // The check can fail: the same names as they are.
  expect(risky(Papa.unparse(names.map((name) => [name]))).length).toBeGreaterThanOrEqual(3);
  expect(
    risky(
      writeSheet(
        ["name"],
        names.map((name) => [name]),
      ),
    ),
  ).toEqual([]);
});

test("nor does one of a rehearsal, and kept-back rows come back as they were", async () => {
  const place = bench();
  try {
    place.write("roster.csv", roster);
    place.write("results.csv", results);
    expect((await place.run(usual)).code).toBe(3);
    for (const name of ["marks.csv", "rejected.csv"])
      expect([name, risky(place.out(name))]).toEqual([name, []]);
  } finally {
    place.remove();
  }
  const table = testDesk();
  await table.as("organiser").day.create({ date: "2026-11-14", title: "t" });
  const uploadId = await bring(table, roster);
  const { intake } = table.as("organiser");
  await intake.take({ uploadId, kind: "roster" });
  const { text } = await intake.keptBackSheet({ uploadId });
  const again = await bring(table, text);
  await intake.take({ uploadId: again, kind: "roster" });
  const cells = (sheet: string) =>
    Papa.parse<string[]>(sheet, { skipEmptyLines: true }).data.map((row) => row.slice(0, 4));
  expect(cells((await intake.keptBackSheet({ uploadId: again })).text)).toEqual(cells(text));
});
