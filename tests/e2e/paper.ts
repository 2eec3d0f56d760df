import { expect, type Locator, type Page } from "@playwright/test";
import { callDoor } from "./page.ts";
import { keyFromPaper } from "./stations.ts";

/** An open day with bibs 1 to `count`, at the station of a test, its bib field ready to type into. */
export async function openStation(desk: Page, code: string, count: number): Promise<void> {
  await callDoor(desk, "day.create", { sure: true, date: "2026-11-14", title: "Autumn testing day" });
  await callDoor(desk, "day.open", { sure: true });
  for (let bib = 1; bib <= count; bib += 1) {
    const outcome = { bib, leaveOut: [], board: "bib", share: false, guardianConsent: false, by: "QA" };
    const who = { league: "North Quay", name: `Skater ${bib}`, number: "", birthYear: 1990 };
    await callDoor(desk, "checkIn.walkUp", { ...who, ...outcome });
  }
  await goToPaper(desk, code);
}

export async function goToPaper(desk: Page, code: string): Promise<void> {
  await desk.evaluate((path) => {
    location.hash = path;
  }, `/station/${code}`);
  await keyFromPaper(desk);
  await expect(field(desk, "Bib")).toBeFocused();
}

/** A field by the beginning of its label. */
export const field = (desk: Page, name: string) => desk.getByRole("textbox", { name });

/** Types each text and Enter, once the field is there. */
export async function key(
  desk: Page,
  ...steps: readonly (readonly [name: string, text: string])[]
): Promise<void> {
  for (const [name, text] of steps) {
    await expect(field(desk, name)).toBeFocused();
    await desk.keyboard.type(text);
    await desk.keyboard.press("Enter");
  }
}

/** What the station tells of its newest attempts, newest first: whose, what was seen, and whether it stands. */
export async function attemptsAt(
  desk: Page,
  code: string,
): Promise<{ bib: number; seen: unknown; stands: boolean }[]> {
  const input = encodeURIComponent(JSON.stringify({ test: code, lengths: "cm" }));
  const answer = await desk.evaluate(
    (sent) => fetch(`/trpc/station.view?input=${sent}`).then((response) => response.json()),
    input,
  );
  return answer.result.data.recent.map(
    ({ attempt }: { attempt: { who: { bib: number }; seen: unknown; void: unknown } }) => ({
      bib: attempt.who.bib,
      seen: attempt.seen,
      stands: attempt.void === null,
    }),
  );
}

/** Waits until something is wholly in the window, with nothing over its middle. */
export async function isInSight(what: Locator): Promise<void> {
  await expect(what).toBeInViewport({ ratio: 1 });
  const isOnTop = () =>
    what.evaluate((element) => {
      const { left, top, width, height } = element.getBoundingClientRect();
      return element.contains(document.elementFromPoint(left + width / 2, top + height / 2));
    });
  await expect.poll(isOnTop).toBe(true);
}
