import { expect, test } from "vitest";
import type { SummaryAttempt, SummaryMark } from "../../../electron/domain/summary/day.ts";
import { judgesOf } from "../../../electron/domain/summary/judges.ts";
import { rootedAttempts } from "../../../electron/domain/summary/roots.ts";

interface Push {
  readonly by: string;
  readonly now: number;
  readonly cadences?: string;
  readonly source?: SummaryAttempt["source"];
}

/** Push-ups, one athlete each, in the order given. */
function day(pushes: readonly Push[]): { marks: SummaryMark[]; attempts: SummaryAttempt[] } {
  const marks = pushes.map(({ now }, index) => ({
    ...{ athleteId: index, test: "push-up" as const, variant: "full" },
    mark: { state: "complete" as const, value: now },
    news: null,
  }));
  const attempts = pushes.map(({ by, now, cadences, source = "station" }, index) => ({
    ...{ id: `a${index}`, seq: index, athleteId: index, test: "push-up" as const, variant: "full" },
    seen: cadences === undefined ? { how: "tally", reps: now, offAtEnd: 0 } : { how: "cadences", cadences },
    ...{
      enteredBy: by,
      note: "",
      source,
      at: "2026-11-14T09:00:00Z",
      performed: null,
      replaces: null,
      heatId: null,
      void: null,
    },
  }));
  return { marks, attempts };
}

function rows(pushes: readonly Push[]) {
  const { marks, attempts } = day(pushes);
  return judgesOf(marks, rootedAttempts(attempts));
}

test("initials in small letters are the same person's; a sheet that names nobody is nobody's", () => {
  const told = rows([
    { by: "qa ", now: 10, source: "sheet" },
    { by: "QA", now: 12 },
    { by: "sheet", now: 14, source: "sheet" },
    { by: "", now: 16, source: "sheet" },
  ]);
  expect(told.map(({ judge, marks }) => [judge, marks.count])).toEqual([
    [{ kind: "named", name: "QA" }, 2],
    [{ kind: "unnamed" }, 2],
  ]);
});

test("a mark that two people entered is neither's", () => {
  const mark: SummaryMark = {
    ...{ athleteId: 1, test: "agility", variant: "" },
    mark: { state: "complete", value: 118 },
    news: null,
  };
  const trial = (id: string, enteredBy: string, direction: string): SummaryAttempt => ({
    ...{ id, seq: 1, athleteId: 1, test: "agility", variant: "", enteredBy },
    seen: { direction, laps: 7, extra: 1, touches: 0 },
    ...{ note: "", source: "station", at: "2026-11-14T09:00:00Z", replaces: null, heatId: null, void: null },
    performed: "2026-11-14T09:00:00Z",
  });
  const told = judgesOf([mark], rootedAttempts([trial("a", "QA", "cw"), trial("b", "RS", "ccw")]));
  expect(told.map(({ judge }) => judge)).toEqual([{ kind: "several" }]);
});

test("off cadences are counted where each was judged, and only there", () => {
  const [qa] = rows([
    // 20 on, then three off: 23 judged, 3 off.
    { by: "QA", now: 20, cadences: `${".".repeat(20)}xxx` },
    // 10 on, one off, 5 on: 16 judged, 1 off.
    { by: "QA", now: 16, cadences: "..........x....." },
    { by: "QA", now: 30 },
  ]);
  expect(qa?.cadences).toEqual({ athletes: 2, judged: 39, off: 4 });
});
