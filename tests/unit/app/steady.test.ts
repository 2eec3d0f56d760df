import { expect, test, vi } from "vitest";
import { isSameRow } from "../../../renderer/app/steady.ts";
import { dateFormat } from "../../../renderer/words/dates.ts";

const act = () => {};
const row = (bib: number) => ({ recent: { who: { bib }, doubts: [] }, lengths: "cm", act });

test("a row whose data is new and says the same is the same row; any other difference is seen", () => {
  expect(isSameRow(row(1), row(1))).toBe(true);
  expect(isSameRow(row(1), row(2))).toBe(false);
  expect(isSameRow(row(1), { ...row(1), lengths: "in" })).toBe(false);
  expect(isSameRow(row(1), { ...row(1), act: () => {} })).toBe(false);
  expect(isSameRow<object>(row(1), { ...row(1), now: 5 })).toBe(false);
  expect(isSameRow<object>({ ...row(1), now: 5 }, row(1))).toBe(false);
});

test("a way to write times is made once a second, in the zone that the computer has then", () => {
  vi.useFakeTimers({ now: Date.parse("2026-11-14T09:00:00Z") });
  const before = dateFormat("time", "en");
  expect(dateFormat("time", "en")).toBe(before);
  expect(dateFormat("time", "es")).not.toBe(before);
  expect(dateFormat("day", "en")).not.toBe(before);
  vi.advanceTimersByTime(999);
  expect(dateFormat("time", "en")).toBe(before);
  vi.advanceTimersByTime(1);
  expect(dateFormat("time", "en")).not.toBe(before);
  // A clock that was set back.
  vi.setSystemTime(Date.parse("2026-11-13T09:00:00Z"));
  const back = dateFormat("time", "en");
  vi.setSystemTime(Date.parse("2026-11-13T08:00:00Z"));
  expect(dateFormat("time", "en")).not.toBe(back);
  vi.useRealTimers();
});
