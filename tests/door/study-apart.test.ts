import { randomUUID } from "node:crypto";
import { expect, test } from "vitest";
import { dump } from "../store/hall.ts";
import { holdDay, initials, skaters } from "./bundle-hall.ts";
import { type TestDesk, testDesk } from "./desk.ts";
import { bring } from "./sheets.ts";

/** All that shows results, as text: whoever reads a study's readings there would change a byte of it. */
async function everything({ as, desk }: TestDesk, dayId: number): Promise<Record<string, string>> {
  const { cards, board, noise, summary, people, bundle } = as("organiser");
  const athletes = await people.list({});
  const pages = await Promise.all(
    athletes.people.map(({ athleteId }) => people.get({ athleteId, lengths: "cm" })),
  );
  const preview = await bundle.preview({ dayId });
  const shown = {
    cards: await cards.list({ dayId, which: { kind: "all" }, lengths: "cm" }),
    board: await board.view(),
    noise: await noise.get(),
    summary: await summary.get({ dayId }),
    zip: await summary.zip({ dayId }),
    pages,
    bundle: preview?.sha256,
    marks: [...dump(desk.store.db)].filter(
      ([table]) => !table.startsWith("study") && table !== "sqlite_stat1",
    ),
  };
  return Object.fromEntries(Object.entries(shown).map(([name, what]) => [name, JSON.stringify(what)]));
}

test("a study with readings changes no byte of marks, cards, pages, summary, board and shared data", async () => {
  const hall = testDesk();
  const dayId = await holdDay(hall, skaters, ["push-up", "agility", "vertical", "core", "endurance"]);
  const before = await everything(hall, dayId);
  expect(before.bundle).toMatch(/^"[0-9a-f]{64}"$/);
  const { study } = hall.as("organiser");
  const studyId = randomUUID();
  const series = [
    { from: "marks" as const, dayId, judge: initials[0] ?? "" },
    { from: "judge" as const, judge: "RS" },
  ];
  const planned = { id: studyId, test: "push-up", variant: "full", kind: "judges", dayId, aim: 20 } as const;
  await study.plan({ ...planned, series, by: "QA" });
  const rows = skaters.map(({ bib }, index) => `${bib},${60 + index}`);
  const uploadId = await bring(hall, ["bib,mark", ...rows].join("\n"));
  const { counts } = await study.takeSheet({ uploadId, studyId, position: 2, by: "QA" });
  expect(counts.new + counts.keptBack).toBe(skaters.length);
  expect((await study.get({ studyId })).result?.biases[1]?.word).toBe("higher");
  const after = await everything(hall, dayId);
  for (const [name, text] of Object.entries(before))
    expect([name, after[name] === text]).toEqual([name, true]);
  expect(hall.faults).toEqual([]);
  hall.desk.close();
});
