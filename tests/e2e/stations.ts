import { expect, type Locator, type Page } from "@playwright/test";
import { goTo } from "./page.ts";

export type Station = "Strength" | "Agility" | "Power" | "Core" | "Endurance";

/** The part of a station where attempts are keyed. */
export function entryOf(desk: Page): Locator {
  return desk.getByRole("region", { name: "Enter a result" });
}

/** A station runs its test live until somebody chooses paper there, which then holds for the session. */
export async function keyFromPaper(desk: Page): Promise<void> {
  const paper = desk.getByRole("button", { name: /^Enter from paper/ });
  await expect(entryOf(desk).or(paper)).toBeVisible();
  if (await paper.isVisible()) await paper.click();
  await expect(entryOf(desk)).toBeVisible();
}

/** Types a bib and Enter, and waits until the athlete stands there by name. */
export async function takeUp(desk: Page, station: Station, bib: number, name: string): Promise<void> {
  await goTo(desk, station);
  await keyFromPaper(desk);
  const box = entryOf(desk).getByRole("textbox", { name: "Bib", exact: true });
  await expect(box).toBeVisible();
  await box.fill(String(bib));
  await box.press("Enter");
  await expect(entryOf(desk).getByText(name)).toBeVisible();
}

/** Types each value and Enter; the focus moves on by itself, and the last Enter saves. */
export async function key(desk: Page, fields: Readonly<Record<string, string>>): Promise<void> {
  for (const [name, value] of Object.entries(fields)) {
    const field = fieldOf(desk, name);
    await expect(field).toBeFocused();
    await field.fill(value);
    await field.press("Enter");
  }
}

/** A field of the entry, by the beginning of its label. */
export function fieldOf(desk: Page, name: string): Locator {
  return entryOf(desk).getByRole("textbox", { name: new RegExp(`^${name}`) });
}

/** Wrong input: the sentence stands beside the field, and what was typed is still in it. */
export async function isRefused(desk: Page, name: string, typed: string, sentence: string | RegExp) {
  await expect(entryOf(desk).getByText(sentence)).toBeVisible();
  await expect(fieldOf(desk, name)).toHaveValue(typed);
  await expect(fieldOf(desk, name)).toBeFocused();
}

/** The mark big, how it stands, and what else is said of it; read out politely. */
export async function isSaved(desk: Page, ...told: readonly (string | RegExp)[]): Promise<void> {
  const said = entryOf(desk).getByRole("status").filter({ hasText: "Saved" });
  for (const words of told) await expect(said).toContainText(words);
  await expect(entryOf(desk).getByRole("textbox", { name: "Bib", exact: true })).toBeFocused();
}
