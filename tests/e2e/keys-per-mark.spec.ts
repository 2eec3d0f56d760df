import { expect, type Page } from "@playwright/test";
import { test } from "./fixture.ts";
import { median } from "./live.ts";
import { attemptsAt, field, goToPaper, openStation } from "./paper.ts";

// Keys that a mark takes from paper, bib and every Enter included. The bars are what a reviewer counted before doubts
// were asked about differently: no station may take more. The live ones are counted in live-*.spec.ts.

const bibs = [3, 4, 5, 6, 7, 8, 9, 10, 11, 12] as const;

/** What is on the paper of the athlete at `index`, field by field. */
type Paper = (index: number) => readonly (readonly [name: string, text: string])[];

/** Types one athlete's line and returns how many keys that took. Shift for a colon is part of its key. */
async function keysOf(desk: Page, bib: number | null, line: ReturnType<Paper>): Promise<number> {
  let pressed = 0;
  const press = async (key: string) => {
    pressed += 1;
    await desk.keyboard.press(key);
  };
  await expect(field(desk, "Bib")).toBeFocused();
  for (const digit of bib === null ? "" : `${bib}`) await press(digit);
  await press("Enter");
  for (const [name, text] of line) {
    await expect(field(desk, name)).toBeFocused();
    for (const sign of text) await press(sign);
    await press("Enter");
  }
  return pressed;
}

/** Types all athletes' papers and returns the keys of each. */
async function keyed(desk: Page, code: string, ...papers: readonly Paper[]): Promise<number[]> {
  if (code !== "push-up") await goToPaper(desk, code);
  const counts: number[] = [];
  const before = (await attemptsAt(desk, code)).length;
  expect(before).toBe(0);
  for (const [index, bib] of bibs.entries()) {
    let count = 0;
    for (const [turn, paper] of papers.entries()) {
      count += await keysOf(desk, turn === 0 ? bib : null, paper(index));
      await expect(desk.getByRole("status").filter({ hasText: "Saved" })).toBeVisible();
    }
    counts.push(count);
  }
  return counts;
}

function tell(station: string, counts: readonly number[], bar: number): void {
  const mean = counts.reduce((sum, count) => sum + count, 0) / counts.length;
  console.log(
    `${station} from paper: median ${median(counts)}, mean ${mean.toFixed(1)} keys (not more than ${bar})`,
  );
  expect(median(counts)).toBeLessThanOrEqual(bar);
  expect(mean).toBeLessThanOrEqual(bar);
}

test("a mark from paper takes no more keys than it did", async ({ tapeline: { desk } }) => {
  await openStation(desk, "push-up", 14);
  // Who enters is said once.
  await keysOf(desk, 1, [
    ["Top beats in total", "20"],
    ["Missed reps at the end", "0"],
  ]);
  await desk.keyboard.type("mk");
  await desk.keyboard.press("Enter");
  await expect(desk.getByRole("status").filter({ hasText: "Saved" })).toBeVisible();
  const pushUps: number[] = [];
  for (const [index, bib] of bibs.entries()) {
    const line = [
      ["Top beats in total", `${14 + index}`],
      ["Missed reps at the end", `${index % 4}`],
    ] as const;
    pushUps.push(await keysOf(desk, bib, line));
    await expect(desk.getByRole("status").filter({ hasText: `Bib ${bib} ` })).toBeVisible();
  }
  tell("push-up", pushUps, 7.7);
  const trial: Paper = (index) => [
    ["Full laps", `${6 + (index % 3)}`],
    ["Extra quadrants", `${index % 4}`],
    ["Line touches", `${index % 3}`],
  ];
  tell("agility, both directions,", await keyed(desk, "agility", trial, trial), 15.6);
  const once: Paper = (index) => [
    ["Standing reach", `${205 + index}`],
    ["Touch 1", index % 4 === 0 ? `${247 + index}.5` : `${247 + index}`],
    ["Touch 2", ""],
  ];
  tell("leap with one touch", await keyed(desk, "vertical", once), 12.3);
  tell("plank", await keyed(desk, "core", (index) => [["Time", `${1 + (index % 3)}:${15 + index}`]]), 7.5);
  tell(
    "circuit",
    await keyed(desk, "endurance", (index) => [["Time", `${5 + (index % 3)}:${20 + index}`]]),
    7.4,
  );
});

test("a leap with three touches takes no more keys than it did", async ({ tapeline: { desk } }) => {
  await openStation(desk, "push-up", 14);
  await keysOf(desk, 1, [
    ["Top beats in total", "20"],
    ["Missed reps at the end", "0"],
  ]);
  await desk.keyboard.type("mk");
  await desk.keyboard.press("Enter");
  const thrice: Paper = (index) => [
    ["Standing reach", `${205 + index}`],
    ["Touch 1", `${247 + index}`],
    ["Touch 2", `${249 + index}`],
    ["Touch 3", `${248 + index}`],
  ];
  tell("leap with three touches", await keyed(desk, "vertical", thrice), 19);
});
