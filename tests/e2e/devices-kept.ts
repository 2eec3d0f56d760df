import type { Page } from "@playwright/test";
import { callDoor } from "./page.ts";
import { entryOf, fieldOf, keyFromPaper } from "./stations.ts";

/** What is typed at a device, what the table has of it, and what lies on the device's disk. */

/** Reads from the table's door, as its own page does. */
export function readDoor(desk: Page, procedure: string, input?: object): Promise<unknown> {
  const asked = input === undefined ? "" : `?input=${encodeURIComponent(JSON.stringify(input))}`;
  const path = `/trpc/${procedure}${asked}`;
  return desk.evaluate(async (address) => (await (await fetch(address)).json()).result.data, path);
}

interface CoreView {
  readonly queue: readonly { readonly who: { readonly bib: number } }[];
  readonly recent: readonly { readonly attempt: { readonly who: { readonly bib: number } } }[];
}

const core = { test: "core", lengths: "cm" } as const;

/** An athlete of whom no result can be far from the last one, so that nothing is asked. */
export function bibWithoutPast(desk: Page): Promise<number> {
  return bibInQueue(desk, (lasts) => lasts.every((last) => last === null));
}

/** An athlete who was here before: a result far from their last one is asked about. */
export function bibWithPast(desk: Page): Promise<number> {
  return bibInQueue(desk, (lasts) => lasts.some((last) => last !== null));
}

async function bibInQueue(desk: Page, is: (lasts: readonly unknown[]) => boolean): Promise<number> {
  const { queue } = (await readDoor(desk, "station.view", core)) as CoreView;
  for (const { who } of queue) {
    const found = (await readDoor(desk, "station.find", { ...core, bib: String(who.bib) })) as {
      readonly history: readonly { readonly last: unknown }[];
    };
    if (is(found.history.map(({ last }) => last))) return who.bib;
  }
  throw new Error("Nobody in the queue is so.");
}

export async function attemptsOf(desk: Page, bib: number): Promise<number> {
  const { recent } = (await readDoor(desk, "station.view", core)) as CoreView;
  return recent.filter(({ attempt }) => attempt.who.bib === bib).length;
}

/** What lies on a device's disk, as somebody with its browser in hand finds it. */
export function diskOf(page: Page) {
  return page.evaluate(async () => {
    const wait = <Result>(request: IDBRequest<Result>) =>
      new Promise<Result>((resolve) => {
        request.onsuccess = () => resolve(request.result);
      });
    const db = await wait(indexedDB.open("tapeline-device"));
    const rows = await wait(db.transaction("rows").objectStore("rows").getAll());
    const key: CryptoKey = await wait(db.transaction("keys").objectStore("keys").get("seal"));
    db.close();
    const text = rows.map(({ sealed }) => new TextDecoder().decode(sealed)).join("");
    return { rows: rows.length, readable: /athleteId|core|qa/i.test(text), extractable: key.extractable };
  });
}

/** Takes an athlete up and types a time, without saving it. */
export async function typeCore(page: Page, bib: number, time: string): Promise<void> {
  await page.getByRole("heading", { level: 1 }).filter({ hasText: "Staged plank" }).waitFor();
  await keyFromPaper(page);
  await entryOf(page).getByRole("textbox", { name: "Bib", exact: true }).fill(String(bib));
  await page.keyboard.press("Enter");
  await fieldOf(page, "Time").fill(time);
}

/** Saves what was typed, by somebody who has not said their initials yet. */
export async function save(page: Page): Promise<void> {
  await page.keyboard.press("Enter");
  await sayInitials(page);
}

export async function sayInitials(page: Page): Promise<void> {
  await page.getByRole("textbox", { name: "Your initials" }).fill("qa");
  await page.keyboard.press("Enter");
}

/** Turns the switch on at the address of before. */
export function turnOnAgain(desk: Page, url: string): Promise<unknown> {
  return callDoor(desk, "network.turnOn", { address: "127.0.0.1", port: Number(new URL(url).port) });
}

/** Opens a day of the table's own, with two athletes checked in who have no result yet. */
export async function openDayOfTwo(desk: Page, names: readonly [string, string]): Promise<void> {
  await callDoor(desk, "day.create", { sure: true, date: "2026-11-14", title: "Autumn testing day" });
  await callDoor(desk, "day.open", { sure: true });
  for (const [index, name] of names.entries()) {
    const said = {
      bib: index + 1,
      leaveOut: [],
      board: "bib",
      share: false,
      guardianConsent: false,
      by: "QA",
    };
    const who = { league: "North Quay", name, number: String(index + 1), birthYear: 1990 };
    await callDoor(desk, "checkIn.walkUp", { ...who, ...said });
  }
}
