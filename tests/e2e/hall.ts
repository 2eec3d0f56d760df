import { expect, type Page } from "@playwright/test";
import type { HeldClock } from "./held-clock.ts";
import type { Eyes } from "./live.ts";

/** Keeps every text that the board ever shows, from now on. */
export async function watchBoard(board: Eyes): Promise<void> {
  await board.evaluate(`(${keepTexts})()`);
}

/** Runs in the page, and sees nothing around it here. */
function keepTexts(): void {
  const seen = new Set<string>();
  const keep = () => seen.add(document.body.textContent ?? "");
  new MutationObserver(keep).observe(document.body, {
    subtree: true,
    childList: true,
    characterData: true,
  });
  keep();
  Object.assign(window, { seenOnBoard: () => [...seen].join("\n") });
}

/** All that the board has shown since it is watched. */
export async function seenOnBoard(board: Eyes): Promise<string> {
  return String(await board.evaluate("window.seenOnBoard()"));
}

/** All that the board could show: what the door answers to it. */
function answerToBoard(board: Page): Promise<string> {
  return board.evaluate(() => fetch("/trpc/board.view").then((response) => response.text()));
}

/** A hidden athlete is nowhere: neither the name nor the bib, on the wall or in the answer behind it. */
export async function expectNeverShown(board: Page, name: string, bib: number): Promise<void> {
  const [seen, answer] = [await seenOnBoard(board), await answerToBoard(board)];
  // The watch works: somebody who agreed to it was seen.
  expect(seen).toContain("Anvil Sparrow");
  expect(seen.toLowerCase()).not.toContain(name.toLowerCase());
  expect(seen).not.toMatch(new RegExp(`bib ${bib}\\b`, "i"));
  expect(answer).not.toContain(name);
  expect(answer).not.toContain(`"bib":${bib},`);
  expect(answer).not.toContain(`"bib":${bib}}`);
}

/** Lets the board go once through all its scenes, without waiting for each. The clocks must be held. */
export async function throughAllScenes(board: Page, clock: HeldClock): Promise<void> {
  const shown = new Set<string>();
  // Newest bests, the five walls in two groups, calls and totals; then the first again.
  for (const _scene of ["newest", "walls", "walls", "floor", "newest"]) {
    const [scene] = await board
      .getByRole("region")
      .filter({ hasNot: board.getByRole("region") })
      .all();
    shown.add((await scene?.getAttribute("aria-label")) ?? "");
    await clock.pass(15_000);
  }
  expect(shown).toEqual(new Set(["Newest results", "Gains", "Calls and totals"]));
}
