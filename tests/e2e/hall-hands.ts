import { expect, type Page } from "@playwright/test";
import type { TestCode } from "../../electron/domain/tests/registry.ts";
import type { Attempt, ListedAthlete } from "./hall-list.ts";
import { choose } from "./page.ts";

/** What people do at check-in and at a station, in whatever browser: keys, and eyes that read the page. */

/** A page of Playwright or of puppeteer, by what both have. */
export interface Hands {
  evaluate(script: string): Promise<unknown>;
  readonly keyboard: {
    type(text: string): Promise<unknown>;
    press(key: "Enter"): Promise<unknown>;
  };
}

/** Checks an adult in who is on the list, with the bib that is offered. */
export async function checkIn(page: Page, { name, bib }: ListedAthlete): Promise<void> {
  const search = page.getByRole("combobox", { name: "Who is it?" });
  await search.fill(name);
  await page.getByRole("option", { name }).first().click();
  await page.getByRole("heading", { name, level: 2 }).waitFor();
  await page.getByRole("button", { name: "No to all seven" }).click();
  await choose(page, "“How may the big screen in the hall show you?”", "By name");
  await choose(page, "“May your results be published without your name, also on the internet?”", "Yes");
  await page.getByRole("button", { name: `Check in · bib ${bib}` }).click();
  await sayInitialsWhereAsked(page, `Handed over? bib ${bib}`, () =>
    page.getByRole("heading", { name: `${name} is checked in` }).isVisible(),
  );
}

/** Types one athlete's attempts at a test from paper. */
export async function keyIn(
  hands: Hands,
  test: TestCode,
  { bib, attempts }: ListedAthlete,
  saved: (count: number) => Promise<boolean>,
): Promise<void> {
  for (const [turn, attempt] of (attempts[test] ?? []).entries()) {
    await isAt(hands, "Bib");
    // After a first direction Enter alone takes the same athlete up again.
    if (turn === 0) await hands.keyboard.type(String(bib));
    await hands.keyboard.press("Enter");
    await typeFields(hands, attempt);
    await sayInitialsWhereAsked(hands, `${test} of bib ${bib}`, () => saved(turn + 1));
  }
}

async function typeFields(hands: Hands, attempt: Attempt): Promise<void> {
  for (const [label, text] of attempt) {
    await isAt(hands, label);
    await hands.keyboard.type(text);
    await hands.keyboard.press("Enter");
  }
}

/** Who enters is asked once, before the first thing is saved. */
async function sayInitialsWhereAsked(
  hands: Hands,
  what: string,
  isDone: () => Promise<boolean>,
): Promise<void> {
  await expect
    .poll(
      async () => {
        if ((await labelAt(hands)).startsWith("Your initials")) {
          await hands.keyboard.type("QA");
          await hands.keyboard.press("Enter");
        }
        return isDone();
      },
      { message: what },
    )
    .toBe(true);
}

async function isAt(hands: Hands, label: string): Promise<void> {
  await expect.poll(() => labelAt(hands)).toMatch(new RegExp(`^${label}`));
}

/** The label of the field that has the focus. */
async function labelAt(hands: Hands): Promise<string> {
  return String(await hands.evaluate('document.activeElement?.labels?.[0]?.textContent ?? ""'));
}

/** Turns a station to entry from paper. */
export async function takePaper(hands: Hands): Promise<void> {
  const press = `(() => {
    const button = [...document.querySelectorAll("button")].find((each) => each.textContent.startsWith("Enter from paper"));
    button?.click();
    return document.querySelector("section[aria-label='Enter a result']") !== null;
  })()`;
  await expect.poll(() => hands.evaluate(press)).toBe(true);
}
