import { expect, test } from "vitest";
import { newsOf } from "../../../electron/domain/statistics/news.ts";
import type { SummaryAttempt, SummaryMark } from "../../../electron/domain/summary/day.ts";
import { judgesOf } from "../../../electron/domain/summary/judges.ts";
import { rootedAttempts } from "../../../electron/domain/summary/roots.ts";

interface Push {
  readonly by: string;
  readonly before: number | null;
  readonly now: number;
  readonly cadences?: string;
  readonly source?: SummaryAttempt["source"];
}

/** Push-ups, one athlete each, in the order given. */
function day(pushes: readonly Push[]): { marks: SummaryMark[]; attempts: SummaryAttempt[] } {
  const marks = pushes.map(({ before, now }, index) => ({
    ...{ athleteId: index, test: "push-up" as const, variant: "full" },
    mark: { state: "complete" as const, value: now },
    news: newsOf(
      "push-up",
      { date: "2026-11-14", value: now },
      before === null ? [] : [{ date: "2026-04-11", value: before }],
    ),
  }));
  const attempts = pushes.map(({ by, now, cadences, source = "station" }, index) => ({
    ...{ id: `a${index}`, seq: index, athleteId: index, test: "push-up" as const, variant: "full" },
    seen: cadences === undefined ? { how: "tally", reps: now, offAtEnd: 0 } : { how: "cadences", cadences },
    ...{
      enteredBy: by,
      note: "",
      source,
      at: "2026-11-14T09:00:00Z",
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

/** So many athletes of a judge, each changed by the values in turn. */
function changed(by: string, count: number, changes: readonly number[]): Push[] {
  return Array.from({ length: count }, (_, index) => ({
    by,
    before: 20,
    now: 20 + (changes[index % changes.length] ?? 0),
  }));
}

test("judges whose athletes changed alike are told alike", () => {
  const [qa, rs] = rows([...changed("QA", 8, [0, 1, 2, 3]), ...changed("RS", 12, [0, 1, 2, 3])]);
  expect(qa?.compared?.finding).toBe("alike");
  expect(qa?.compared?.shift?.amount).toBe(0);
  expect([qa?.compared?.own?.count, qa?.compared?.others?.count]).toEqual([8, 12]);
  expect(rs?.compared?.finding).toBe("alike");
});

test("a judge whose athletes all gained much more is told higher, and the others lower, with the interval", () => {
  const [qa, rs] = rows([...changed("QA", 8, [7, 8, 9, 10]), ...changed("RS", 12, [0, 1, 2, 3])]);
  // Differences from 7 − 3 = 4 to 10 − 0 = 10, seven in the middle.
  expect(qa?.compared).toMatchObject({ finding: "higher", shift: { amount: 7 } });
  expect(qa?.compared?.shift?.low).toBeGreaterThan(4);
  expect(rs?.compared).toMatchObject({ finding: "lower", shift: { amount: -7 } });
});

test("with four athletes on a side nothing is said, however far apart they are", () => {
  const [qa] = rows([...changed("QA", 4, [20]), ...changed("RS", 30, [0])]);
  expect(qa?.compared).toMatchObject({ finding: "too-few", shift: null });
  const [five] = rows([...changed("QA", 5, [20]), ...changed("RS", 30, [0])]);
  expect(five?.compared?.finding).toBe("higher");
});

test("an athlete without an earlier mark counts as a mark and not as a change", () => {
  const [qa] = rows([
    { by: "QA", before: null, now: 40 },
    ...changed("QA", 5, [1]),
    ...changed("RS", 5, [1]),
  ]);
  expect(qa?.marks.count).toBe(6);
  expect(qa?.compared?.own?.count).toBe(5);
});

test("the more judges are compared, the wider each interval", () => {
  const own = changed("QA", 8, [3, 4, 5, 6]);
  const width = (others: Push[]) => {
    const shift = rows([...own, ...others])[0]?.compared?.shift;
    return (shift?.high ?? 0) - (shift?.low ?? 0);
  };
  const together = width(changed("RS", 16, [0, 2, 4, 6]));
  const split = ["RA", "RB"].flatMap((by) => changed(by, 8, [0, 2, 4, 6]));
  expect(width(split)).toBeGreaterThanOrEqual(together);
});

test("initials in small letters are the same person's; a sheet that names nobody is nobody's", () => {
  const told = rows([
    { by: "qa ", before: null, now: 10, source: "sheet" },
    { by: "QA", before: null, now: 12 },
    { by: "sheet", before: null, now: 14, source: "sheet" },
    { by: "", before: null, now: 16, source: "sheet" },
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
    news: newsOf("agility", { date: "2026-11-14", value: 118 }, []),
  };
  const trial = (id: string, enteredBy: string, direction: string): SummaryAttempt => ({
    ...{ id, seq: 1, athleteId: 1, test: "agility", variant: "", enteredBy },
    seen: { direction, laps: 7, extra: 1, touches: 0 },
    ...{ note: "", source: "station", at: "2026-11-14T09:00:00Z", replaces: null, heatId: null, void: null },
  });
  const told = judgesOf([mark], rootedAttempts([trial("a", "QA", "cw"), trial("b", "RS", "ccw")]));
  expect(told.map(({ judge }) => judge)).toEqual([{ kind: "several" }]);
});

test("off cadences are counted where each was judged, and only there", () => {
  const [qa] = rows([
    // 20 on, then three off: 23 judged, 3 off.
    { by: "QA", before: null, now: 20, cadences: `${".".repeat(20)}xxx` },
    // 10 on, one off, 5 on: 16 judged, 1 off.
    { by: "QA", before: null, now: 16, cadences: "..........x....." },
    { by: "QA", before: null, now: 30 },
  ]);
  expect(qa?.cadences).toEqual({ athletes: 2, judged: 39, off: 4 });
});
