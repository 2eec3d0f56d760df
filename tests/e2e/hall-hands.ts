import { expect, type Page } from "@playwright/test";
import type { TestCode } from "../../electron/domain/tests/registry.ts";
import type { Attempt, ListedAthlete } from "./hall-list.ts";
import { choose } from "./page.ts";

/** What people do at check-in and at a station, in whatever browser: keys, and eyes that read the page. */

/** A page of Playwright or of puppeteer, by what both have. */
export interface Hands {
  evaluate(script: string): Promise<unknown>;
  readonly keyboard: {
    type(text: string, how?: { readonly delay?: number }): Promise<unknown>;
    press(key: "Enter" | "a" | "y"): Promise<unknown>;
  };
}

/** Says whether the table has so many attempts of an athlete at a test. */
export type IsSaved = (test: TestCode, bib: number, count: number) => Promise<boolean>;

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
  await untilDone(page, `bib ${bib} is handed over`, () =>
    page.getByRole("heading", { name: `${name} is checked in` }).isVisible(),
  );
}

/** Turns a station to entry from paper. */
export async function takePaper(hands: Hands): Promise<void> {
  await expect
    .poll(async () => {
      await pressWhereThere(hands, "button", "Enter from paper");
      return isThere(hands, "section[aria-label='Enter a result']");
    })
    .toBe(true);
}

/** Calls the next athlete at a station that enters from paper. */
export async function callNext(hands: Hands): Promise<void> {
  await expect
    .poll(async () => {
      // Nothing happens before the one who was checked in stands in the queue.
      await pressWhereThere(hands, "button", "Call the next one");
      return hands.evaluate(`${findBy("button", "Cancel call")} !== undefined`);
    })
    .toBe(true);
}

/** Types one athlete's attempts at a test from paper. */
export async function keyIn(
  hands: Hands,
  test: TestCode,
  { bib, attempts }: ListedAthlete,
  isSaved: IsSaved,
): Promise<void> {
  for (const [turn, attempt] of (attempts[test] ?? []).entries()) {
    await isAt(hands, "Bib");
    // After a first direction Enter alone takes the same athlete up again.
    if (turn === 0) await hands.keyboard.type(String(bib));
    await hands.keyboard.press("Enter");
    await typeFields(hands, attempt);
    await untilDone(hands, `${test} of bib ${bib}`, () => isSaved(test, bib, turn + 1));
  }
}

async function typeFields(hands: Hands, attempt: Attempt): Promise<void> {
  for (const [label, text] of attempt) {
    await isAt(hands, label);
    await hands.keyboard.type(text);
    await hands.keyboard.press("Enter");
  }
}

/** Waits until something is done; says who enters where that is asked, and yes to a doubt, since so it is on the list. */
export async function untilDone(hands: Hands, what: string, isDone: () => Promise<boolean>): Promise<void> {
  await expect
    .poll(
      async () => {
        await answerAsked(hands);
        return isDone();
      },
      { message: what },
    )
    .toBe(true);
}

async function answerAsked(hands: Hands): Promise<void> {
  if (await asksInitials(hands)) {
    await hands.keyboard.type("QA");
    await hands.keyboard.press("Enter");
    await expect.poll(() => asksInitials(hands)).toBe(false);
  } else if (await doubts(hands)) {
    await hands.keyboard.press("y");
    await expect.poll(() => doubts(hands)).toBe(false);
  }
}

async function asksInitials(hands: Hands): Promise<boolean> {
  return (await labelAt(hands)).startsWith("Your initials");
}

async function doubts(hands: Hands): Promise<boolean> {
  const alerts = '[...document.querySelectorAll("[role=alert]")]';
  return (
    (await hands.evaluate(`${alerts}.some((each) => each.textContent.includes("Is this right?"))`)) === true
  );
}

async function isAt(hands: Hands, label: string): Promise<void> {
  await expect.poll(() => labelAt(hands)).toMatch(new RegExp(`^${label}`));
}

/** The label of the field that has the focus. */
async function labelAt(hands: Hands): Promise<string> {
  return String(await hands.evaluate('document.activeElement?.labels?.[0]?.textContent ?? ""'));
}

/** Waits for what the page has by a selector. */
export async function isShown(hands: Hands, selector: string): Promise<void> {
  await expect.poll(() => isThere(hands, selector), { message: selector }).toBe(true);
}

async function isThere(hands: Hands, selector: string): Promise<boolean> {
  return (await hands.evaluate(`document.querySelector(${JSON.stringify(selector)}) !== null`)) === true;
}

/** Presses the first element of a kind whose text begins so, once it is there. */
export async function pressText(hands: Hands, kind: "button" | "label", text: string): Promise<void> {
  await expect.poll(() => pressWhereThere(hands, kind, text), { message: text }).toBe(true);
}

/** The same, where it is there now; says whether it was. */
export async function pressWhereThere(
  hands: Hands,
  kind: "button" | "label",
  text: string,
): Promise<boolean> {
  const press = `(() => {
    const found = ${findBy(kind, text)};
    found?.click();
    return found !== undefined;
  })()`;
  return (await hands.evaluate(press)) === true;
}

/** The script that finds the first element of a kind whose text begins so. */
function findBy(kind: "button" | "label", text: string): string {
  const begins = `(each) => each.textContent.startsWith(${JSON.stringify(text)})`;
  return `[...document.querySelectorAll("${kind}")].find(${begins})`;
}
