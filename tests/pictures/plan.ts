import type { Page } from "@playwright/test";
import { crowd } from "../door/crowd.ts";
import { callDoor } from "../e2e/page.ts";
import { takeSheet } from "../e2e/sheets.ts";
import type { Studio } from "./app.ts";
import { takePaper } from "./paper.ts";
import { go, take, takeOnScreens, takeWhole } from "./take.ts";

/** The plan of a day with nobody, with few, with as many as usual and with very many, in both languages. */
export async function takePlans({ desk }: Studio): Promise<void> {
  for (const count of [0, 12, 60, 200]) {
    const { dayId } = (await callDoor(desk, "day.create", {
      ...{ sure: true, date: "2026-12-05", title: "Winter testing day" },
    })) as { dayId: number };
    if (count > 0) await takeSheet(desk, "roster", listOf(count));
    await desk.reload();
    if (count === 200) await takeWork(desk);
    await takePlan(desk, `plan-${count}`, count > 0);
    if (count === 60) await takeParts(desk);
    if (count < 200) await callDoor(desk, "day.discard", { dayId });
  }
  await callDoor(desk, "day.open", { sure: true });
  await go(desk, "/plan");
  await desk.getByText(/^As it was planned/).waitFor();
  await takeWhole(desk, "plan-open-whole");
}

function listOf(count: number): string {
  const rows = crowd(count).map(({ league, name, number }) => `${league},${name},${number},1995`);
  return ["league,name,number,birth_year", ...rows].join("\n");
}

async function takePlan(desk: Page, name: string, isThere: boolean): Promise<void> {
  for (const language of ["en", "es"]) {
    await callDoor(desk, "language.choose", { language });
    await go(desk, "/plan");
    if (isThere) await isWorkedOut(desk);
    await takeOnScreens(desk, `${name}-${language}`);
    await takeWhole(desk, `${name}-${language}-whole`);
  }
  await callDoor(desk, "language.choose", { language: "en" });
  await go(desk, "/day");
}

/** While it is worked out, and stopped. */
async function takeWork(desk: Page): Promise<void> {
  await go(desk, "/plan");
  await desk.getByRole("progressbar").first().waitFor();
  await take(desk, "plan-working-first");
  const stop = desk
    .getByRole("region", { name: "What one more would bring" })
    .getByRole("button", { name: "Stop" });
  await stop.waitFor({ timeout: 60_000 });
  await takeWhole(desk, "plan-working-whole");
  await stop.click();
  await takeWhole(desk, "plan-stopped-whole");
  await desk.getByRole("button", { name: "Work it out" }).click();
  await go(desk, "/day");
}

/** What the changes would bring comes last. */
async function isWorkedOut(desk: Page): Promise<void> {
  await desk.locator("[data-gains]").waitFor({ timeout: 120_000 });
}

/** What is asked for, the page for the leagues, and a day that has begun. */
async function takeParts(desk: Page): Promise<void> {
  await go(desk, "/day");
  await takeWhole(desk, "plan-60-day");
  await go(desk, "/plan");
  for (const [name, does] of [
    ["hours", "Change when the tests begin, and the breaks"],
    ["leagues", "Change who comes"],
    ["station", "Change: Quadrant jump"],
    ["calls", "Change the judges, the order and the calls"],
  ] as const) {
    await desk.getByRole("button", { name: does }).click();
    await desk.getByRole("alertdialog").waitFor();
    await take(desk, `plan-ask-${name}`);
    await desk.keyboard.press("Escape");
  }
  for (const paper of ["a4", "letter"]) await takePaper(desk, `plan-${paper}`, `/print/plan/${paper}`);
  await go(desk, "/day");
}
