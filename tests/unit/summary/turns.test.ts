import { expect, test } from "vitest";
import { foldHeat } from "../../../electron/domain/heats/fold.ts";
import type { SummaryAttempt, SummaryDay } from "../../../electron/domain/summary/day.ts";
import { workIn } from "../../../electron/domain/summary/lanes.ts";
import { stationsOf, turnTimes } from "../../../electron/domain/summary/turns.ts";
import { cm } from "../../lengths.ts";

/** An attempt of a plank at a time of the morning. */
function plank(
  seq: number,
  athleteId: number,
  time: string,
  more: Partial<SummaryAttempt> = {},
): SummaryAttempt {
  const { at = `2026-11-14T${time}Z`, source = "station" } = more;
  return {
    performed: source === "sheet" ? null : at,
    ...{ id: `a${seq}`, seq, athleteId, test: "core", variant: "", seen: { held: 60_000 } },
    ...{
      enteredBy: "QA",
      note: "",
      source: "station",
      at: `2026-11-14T${time}Z`,
      replaces: null,
      heatId: null,
      void: null,
    },
    ...more,
  };
}

function dayOf(attempts: readonly SummaryAttempt[]): SummaryDay {
  const ids = [...new Set(attempts.map(({ athleteId }) => athleteId))];
  const people = ids.map((athleteId) => ({
    ...{
      athleteId,
      name: `N${athleteId}`,
      number: "",
      bib: athleteId,
      league: "L",
      state: "testing" as const,
    },
  }));
  return { state: "open", people, marks: [], attempts, leftOut: [], laneTimes: [] };
}

const shares = (attempts: readonly SummaryAttempt[]) =>
  turnTimes(dayOf(attempts)).map(({ athleteId, ms }) => [athleteId, ms]);

test("a heat's time is shared among its athletes, from the end of the turn before to its last entry", () => {
  const heat = (seq: number, athleteId: number, time: string, id: string) =>
    plank(seq, athleteId, time, { source: "heat", heatId: id });
  expect(
    shares([
      plank(1, 1, "09:00:00"),
      // Two side by side: nine minutes after the one before, 4.5 minutes each.
      heat(2, 2, "09:08:00", "h1"),
      heat(3, 3, "09:09:00", "h1"),
      // Three in the next heat: six minutes, two each.
      heat(4, 4, "09:12:00", "h2"),
      heat(5, 5, "09:13:00", "h2"),
      heat(6, 6, "09:15:00", "h2"),
    ]),
  ).toEqual([
    [1, null],
    [2, 270_000],
    [3, 270_000],
    [4, 120_000],
    [5, 120_000],
    [6, 120_000],
  ]);
});

test("a pause of over 20 minutes, and a clock that was set back, are not known; exactly 20 minutes are", () => {
  expect(
    shares([
      plank(1, 1, "09:00:00"),
      plank(2, 2, "09:20:00"),
      plank(3, 3, "09:40:01"),
      plank(4, 4, "09:10:00"),
      plank(5, 5, "09:13:00"),
    ]),
  ).toEqual([
    [1, null],
    [2, 1_200_000],
    [3, null],
    [4, null],
    [5, 180_000],
  ]);
});

test("a correction leaves the time of what it corrects; sheets and what was taken back have none", () => {
  const ended = { reason: "Slip", by: "QA", at: "2026-11-14T11:00:00Z" };
  const attempts = [
    plank(1, 1, "09:00:00"),
    plank(2, 2, "09:03:00", { void: ended }),
    plank(3, 3, "09:05:00", { void: ended }),
    plank(4, 4, "09:06:00", { source: "sheet" }),
    plank(5, 5, "09:10:00"),
    plank(6, 2, "11:00:00", { replaces: "a2" }),
  ];
  expect(shares(attempts)).toEqual([
    [1, null],
    [2, 180_000],
    [5, 420_000],
  ]);
  const day = dayOf(attempts);
  expect(stationsOf(day, turnTimes(day))[3]).toMatchObject({ test: "core", leftOut: 1, fromSheets: 1 });
});

const parameters = { trials: 3 };

test("a lane at its own pace is at work from its first tap to its last that changed anything", () => {
  const tap = (id: string, atMs: number, kind: string, detail: unknown = {}) => ({
    id,
    lane: 1,
    atMs,
    kind,
    detail,
  });
  const events = [
    tap("r", 20_000, "reach", { length: cm(210) }),
    tap("1", 45_000, "touch", { length: cm(250) }),
    tap("2", 80_000, "touch", { length: cm(251) }),
    tap("3", 110_000, "touch", { length: cm(252) }),
    // All three trials are there: one more changes nothing.
    tap("4", 300_000, "touch", { length: cm(253) }),
  ];
  const [lane] = foldHeat("vertical", parameters, [{ lane: 1, prior: [] }], events, null);
  if (lane === undefined) throw new Error("There is no lane.");
  // 110 s less 20 s.
  expect(workIn("own", lane, events)).toBe(90_000);
  const [half] = foldHeat("vertical", parameters, [{ lane: 1, prior: [] }], events.slice(0, 2), null);
  if (half === undefined) throw new Error("There is no lane.");
  expect(workIn("own", half, events.slice(0, 2))).toBeNull();
});

test("a tap that was taken back is not time at work", () => {
  const events = [
    { id: "1", lane: 1, atMs: 50_000, kind: "stop", detail: {} },
    { id: "u", lane: 1, atMs: 55_000, kind: "undo", detail: { eventId: "1" } },
    { id: "2", lane: 1, atMs: 90_000, kind: "stop", detail: {} },
  ];
  const [lane] = foldHeat("core", { cycle: 240 }, [{ lane: 1, prior: [] }], events, null);
  if (lane === undefined) throw new Error("There is no lane.");
  expect(workIn("common", lane, events)).toBe(90_000);
});
