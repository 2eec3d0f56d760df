import { unzipSync } from "fflate";
import { expect, test } from "vitest";
import { lookAt } from "./sheets.ts";
import { workedDay } from "./summary-day.ts";

test("the summary's own wide sheet goes back in as past results of the day that is said", async () => {
  const day = await workedDay();
  const { bytes } = await day.summary.zip({ dayId: day.dayId, leagueId: null });
  const sheet = unzipSync(Buffer.from(bytes, "base64"))["athletes.csv"] ?? new Uint8Array();
  const asked = await lookAt(day, sheet);
  expect({ kind: asked.kind, missing: asked.missing, wide: asked.wide }).toEqual({
    kind: "past",
    missing: ["date"],
    wide: true,
  });
  const preview = await lookAt(day, sheet, { date: "2026-11-13" });
  expect(preview.keptBack).toEqual([]);
  const ada = preview.rows.filter(({ cells }) => cells.name === "Ada Rill").map(({ cells }) => cells);
  expect(ada.map(({ test: code, mark }) => [code, mark]).sort()).toEqual([
    ["agility", "29.5"],
    ["core", "95"],
    ["endurance", "366.8"],
    ["push-up", "26"],
    ["vertical", "42"],
  ]);
  expect(ada.find(({ test: code }) => code === "push-up")?.variant).toBe("full");
});
