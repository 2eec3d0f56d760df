import { expect } from "@playwright/test";
import type { TestCode } from "../../electron/domain/tests/registry.ts";
import { type Hands, type IsSaved, isShown, pressText, pressWhereThere, untilDone } from "./hall-hands.ts";
import type { ListedAthlete } from "./hall-list.ts";
import { heatOf } from "./live.ts";
import { scan } from "./live-own.ts";

/** Live heats of which the mark hangs on what is counted or read, and not on a clock that nobody holds in a browser. */

/** As many athletes as begin at a station that runs its test. */
export const heatSize = 2;

/** Runs one heat of a test live. */
export type RunHeat = (hands: Hands, athletes: readonly ListedAthlete[], isSaved: IsSaved) => Promise<void>;

export const liveHeats: Partial<Record<TestCode, RunHeat>> = { agility: jumpAround, vertical: leap };

/** A person's pace, in ms between keys: a scanner is faster than this. */
const pace = { delay: 70 };

/** Both jump at once, on one signal; each is counted after the whistle, clockwise and then counter-clockwise. */
async function jumpAround(hands: Hands, athletes: readonly ListedAthlete[], isSaved: IsSaved): Promise<void> {
  await scanIn(hands, "agility", athletes);
  for (const direction of [0, 1]) {
    await startTogether(hands);
    for (const { bib, attempts } of athletes) {
      await isShown(hands, '[data-pace="own"][data-test="agility"] fieldset');
      const counts = (attempts.agility?.[direction] ?? []).map(([, text]) => text);
      await hands.keyboard.type(counts.join(""), pace);
      await untilDone(hands, `agility of bib ${bib}`, () => isSaved("agility", bib, direction + 1));
    }
  }
}

/** Presses the key until the page has heard it; a press more does nothing to lanes that are under way. */
async function startTogether(hands: Hands): Promise<void> {
  const text = JSON.stringify(`Start ${heatSize} lanes together`);
  const isOffered = async () =>
    (await hands.evaluate(`document.body.textContent.includes(${text})`)) === true;
  await expect.poll(isOffered).toBe(true);
  await expect
    .poll(async () => {
      if (await isOffered()) await hands.keyboard.press("a");
      return isOffered();
    })
    .toBe(false);
}

/** One after the other: the standing reach and three touches, in centimetres. */
async function leap(hands: Hands, athletes: readonly ListedAthlete[], isSaved: IsSaved): Promise<void> {
  await scanIn(hands, "vertical", athletes);
  // A reading with a half is not entered before its last digit, however slow the machine is.
  await pressText(hands, "label", "Save automatically after three digits");
  for (const { bib, attempts } of athletes) {
    for (const [turn, [, text]] of (attempts.vertical?.[0] ?? []).entries()) {
      await isShown(
        hands,
        `[role=status][aria-label="${turn === 0 ? "Standing reach" : `Height touched, ${turn} of 3`}: "]`,
      );
      await hands.keyboard.type(text, pace);
      await hands.keyboard.press("Enter");
      await untilDone(hands, `jump ${turn} of bib ${bib}`, () => isSaved("vertical", bib, turn));
    }
  }
}

/** Puts athletes into the lanes as the scan of their badges does, also those who still rest after the test before. */
async function scanIn(hands: Hands, test: TestCode, athletes: readonly ListedAthlete[]): Promise<void> {
  const bibs = athletes.map(({ bib }) => bib);
  for (const [index, bib] of bibs.entries()) {
    const wanted = bibs.slice(0, index + 1).join();
    await isShown(hands, `[data-whole-window] [data-test="${test}"]`);
    await untilDone(hands, `bib ${bib} has a lane`, async () => {
      // Under a dialog that is about to close nothing is scanned, and somebody who has a lane keeps it.
      const isOffered = await pressWhereThere(hands, "button", "Let them start now");
      if (!isOffered) await scan(hands, String(bib));
      return (await bibsInLanes(hands, test)) === wanted;
    });
  }
}

async function bibsInLanes(hands: Hands, test: TestCode): Promise<string> {
  const heat = await heatOf(hands, test).catch(() => null);
  return (heat?.lane ?? []).map(({ who }) => who.bib).join();
}
