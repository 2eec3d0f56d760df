import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, type Page, type TestInfo } from "@playwright/test";
import { choosePlace, turnOnHere } from "./joining.ts";
import { closeApp, type Launched, launchApp, pageOf, type Stage } from "./launch.ts";
import { callDoor } from "./page.ts";
import { keepEvidence, type Tapeline } from "./session.ts";

/** A second laptop: the same program with a data folder of its own. */
export interface Laptop {
  readonly launched: Launched;
  /** The page of its one window, at its own desk or at the table. */
  page(host: "desk" | "device"): Promise<Page>;
  /** Ends it as a flat battery does, and starts it again. */
  restart(): Promise<void>;
  end(): Promise<void>;
}

async function openLaptop(stage: Stage): Promise<Laptop> {
  const folder = await mkdtemp(join(tmpdir(), "tapeline-joined-"));
  let launched = await launchApp(stage, folder);
  return {
    get launched() {
      return launched;
    },
    page: (host) => pageOf(launched.app, host),
    async restart() {
      await kill(launched);
      launched = await launchApp(stage, folder);
    },
    async end() {
      await closeApp(launched, true);
      await rm(folder, { recursive: true, force: true, maxRetries: 5 });
    },
  };
}

/** A laptop for one test, as the runner's `extend` takes it. */
export async function withLaptop(
  { stage }: { stage: Stage },
  use: (laptop: Laptop) => Promise<void>,
  info: TestInfo,
): Promise<void> {
  const laptop = await openLaptop(stage);
  await use(laptop);
  if (info.status !== info.expectedStatus) await keepEvidence(laptop.launched);
  await laptop.end();
}

/** Ends a program at once, without a word to anybody. */
export async function kill({ process }: Pick<Launched, "process">): Promise<void> {
  const ended = new Promise((resolve) => process.once("exit", resolve));
  process.kill("SIGKILL");
  await ended;
}

/** The athlete of the table's day, who has nothing before the plank. */
export const athlete = { bib: 1, name: "Anvil Sparrow" };

/** Opens a day of the hall's own with one athlete, and turns the switch on, for this machine alone. */
export async function openOwnTable({ desk }: Tapeline): Promise<string> {
  await callDoor(desk, "day.create", { sure: true, date: "2026-03-14", title: "Spring testing day" });
  await callDoor(desk, "day.open", { sure: true });
  await callDoor(desk, "checkIn.walkUp", {
    ...{ league: "North Quay", name: athlete.name, number: "12", birthYear: null, category: null },
    ...{ bib: athlete.bib, leaveOut: ["push-up", "agility", "vertical"], board: "name", share: true },
    ...{ guardianConsent: true, by: "qa" },
  });
  return turnOnHere(desk);
}

/** What the table's screen shows to whoever joins. */
export async function shownAt(desk: Page): Promise<{ address: string; code: string; key: string }> {
  const show = desk.getByRole("button", { name: "Show a code" });
  // Not the key, whose first two of five groups can be digits alone.
  const code = desk.locator("dd").filter({ hasText: /^[0-9A-Z]{4} [0-9A-Z]{4}(?! [0-9a-f]{4}\b)/ });
  await expect(show.or(code)).toBeVisible();
  if (await show.isVisible()) await show.click();
  const textOf = async (name: string) =>
    ((await code.locator(`xpath=../dd[${name}]`).textContent()) ?? "").trim();
  return { address: await textOf("1"), code: (await textOf("2")).slice(0, 9), key: await textOf("3") };
}

/** Types what the table shows at the laptop, as people do, and asks. */
export async function askToJoin(
  page: Page,
  typed: { address: string; code: string; key: string },
): Promise<void> {
  const address = page.getByRole("textbox", { name: "Address" });
  await address.waitFor();
  await address.fill(typed.address);
  await page.getByRole("textbox", { name: "Code" }).fill(typed.code.toLowerCase());
  await page.getByRole("textbox", { name: "That laptop's key" }).fill(typed.key);
  await page.getByRole("textbox", { name: "Name of this laptop" }).fill("Second laptop");
  await page.getByRole("button", { name: "Join", exact: true }).click();
}

/** Lets the laptop in that asks on its first screen, for a place. */
export async function letIn(desk: Page, first: Page, place: string): Promise<void> {
  await first.getByText("Waiting for the organiser's yes.").waitFor();
  await choosePlace(desk.getByLabel("Use Second laptop for"), place);
  await desk.getByRole("button", { name: "Let it in" }).click();
}

/** Joins the table from the laptop's first screen, and is let in; returns the laptop's page at its place. */
export async function joinTable(desk: Page, laptop: Laptop, place: string): Promise<Page> {
  const first = await laptop.page("desk");
  await first.getByRole("link", { name: "Join a table" }).click();
  await askToJoin(first, await shownAt(desk));
  await letIn(desk, first, place);
  return laptop.page("device");
}
