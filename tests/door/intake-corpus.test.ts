import { expect, test } from "vitest";
import { allAthletes } from "../../electron/store/tables/athletes.ts";
import { corpus } from "../unit/sheets/corpus/corpus.ts";
import { refusalOf, testDesk } from "./desk.ts";
import { bring, checkIn, holdDay, look, take } from "./sheets.ts";

const roster = `league,name,number
Lantern Bay,Vera Velocity,07
Lantern Bay,Zoë Brake,7
Mill City,Otto Orbit,55
`;

/** A day with three athletes who have the bibs 1 to 3. */
async function hall() {
  const table = testDesk();
  const dayId = holdDay(table, { open: true });
  await take(table, "roster", roster);
  for (const { id } of allAthletes(table.desk.store.db)) checkIn(table, dayId, id, id);
  return table;
}

test("there are at least 40 sheets of 12 kinds of carelessness", () => {
  expect(corpus.length).toBeGreaterThanOrEqual(40);
  expect(new Set(corpus.map(({ carelessness }) => carelessness)).size).toBe(12);
});

test.each(corpus)("$carelessness: $what", async ({ sheet, said = {}, expected }) => {
  const { kind, isNew, not = [], missing = [], has = {} } = expected;
  const table = await hall();
  const uploadId = await bring(table, sheet);
  const preview = await look(table, { uploadId, ...said });
  const reasons = preview.keptBack.map(({ line, field, reason, also }) => [
    line,
    ...[{ field, reason }, ...also].map((each) => `${each.field} ${each.reason.key}`),
  ]);
  expect({ kind: preview.kind, missing: preview.missing, reasons }).toEqual({ kind, missing, reasons: not });
  expect(preview.counts).toMatchObject({ new: isNew, keptBack: not.length });
  if (isNew > 0) expect(preview.rows.map(({ cells }) => cells)).toContainEqual(expect.objectContaining(has));

  const taking = table.as("organiser").intake.take({ uploadId, ...said, kind });
  if (missing.length > 0) {
    expect((await refusalOf(taking)).key).toBe(`sheets.missing.${missing[0]}`);
    return;
  }
  expect((await taking).counts).toMatchObject({ new: isNew, keptBack: not.length });
  // The same sheet again changes nothing.
  const again = await table.as("organiser").intake.take({ uploadId, ...said, kind });
  expect(again.counts).toMatchObject({ new: 0, changed: 0, known: isNew });
  expect(table.faults).toEqual([]);
});
