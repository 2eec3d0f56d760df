import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, type Page } from "@playwright/test";
import { openDevice } from "./browsers.ts";
import { joinAs, test as withBrowsers } from "./devices.ts";
import { attemptsOf, openDayOfTwo, readDoor, save, typeCore } from "./devices-kept.ts";
import { joinTable, kill, type Laptop, withLaptop } from "./joined-program.ts";
import { turnOnAt, turnOnHere } from "./joining.ts";
import { callDoor } from "./page.ts";
import type { Tapeline } from "./session.ts";
import { answerOpenDialog } from "./sheets.ts";

/** Two laptops in one network: each a table of its own, and one that goes on where the other died. */

const test = withBrowsers.extend<{ other: Laptop; joined: Laptop; stick: string }>({
  other: withLaptop,
  joined: withLaptop,
  // biome-ignore lint/correctness/noEmptyPattern: the runner reads the names of what is wanted from this pattern.
  stick: async ({}, use) => {
    const stick = await mkdtemp(join(tmpdir(), "tapeline-stick-"));
    await use(stick);
    await rm(stick, { recursive: true });
  },
});

test("what waits for one table goes to no other one at its address, though its day has the same number and date", async ({
  tapeline: { desk },
  other,
  chromium,
}) => {
  const second = await other.page("desk");
  await openDayOfTwo(desk, ["Petra Fied", "Max Impact"]);
  await openDayOfTwo(second, ["Ada Mant", "Flo Tilla"]);
  const url = await turnOnHere(desk);
  const { page, context } = await openDevice(chromium, 1024, 768);
  await joinAs(desk, { page }, url, "Blue tablet", "Core");
  await typeCore(page, 1, "1:07");
  await save(page);
  await expect(page.getByText(/sent entries saved/)).toBeVisible();
  await typeCore(page, 2, "1:08");
  await callDoor(desk, "network.turnOff", {});
  await page.keyboard.press("Enter");
  await expect(page.getByText(/1 waits for the table/)).toBeVisible();

  await turnOnAt(second, portOf(url));
  await expect(
    page.getByRole("heading", { name: "1 entry on this device is not at the table" }),
  ).toBeVisible();
  await joinAs(second, { page }, url, "Blue tablet", "Core");
  await page.getByRole("button", { name: "1 not accepted…" }).click();
  await expect(page.getByText(/^It was entered for another day or another laptop/)).toBeVisible();
  await page.getByRole("button", { name: "Close" }).click();
  for (const bib of [1, 2]) expect(await attemptsOf(second, bib)).toBe(0);

  // Back at its own table it goes where it belongs.
  await callDoor(second, "network.turnOff", {});
  await turnOnAt(desk, portOf(url));
  await page.getByRole("heading", { name: "1 entry on this device is not at the table" }).waitFor();
  await joinAs(desk, { page }, url, "Blue tablet again", "Core");
  await page.getByRole("button", { name: "1 not accepted…" }).click();
  await page.getByRole("button", { name: "Try again" }).click();
  await expect.poll(() => attemptsOf(desk, 2)).toBe(1);
  expect(await attemptsOf(desk, 1)).toBe(1);
  await context.close();
});

test("another laptop goes on as the table from a locked stick: its devices hand in what it lacks, once", async ({
  tapeline,
  other,
  joined,
  stick,
  chromium,
}) => {
  const { desk } = tapeline;
  await openDayOfTwo(desk, ["Petra Fied", "Max Impact"]);
  const url = await turnOnHere(desk);
  const { page, context } = await openDevice(chromium, 1024, 768);
  await joinAs(desk, { page }, url, "Blue tablet", "Core");
  const program = await joinTable(desk, joined, "Core");
  await backUpTo(stick, tapeline);
  for (const [index, each] of [page, program].entries()) {
    await typeCore(each, index + 1, `1:0${index + 1}`);
    await save(each);
    await expect.poll(() => attemptsOf(desk, index + 1)).toBe(1);
  }
  await kill({ process: tapeline.app.process() });

  const heir = await other.page("desk");
  await restoreFrom(stick, heir, other);
  for (const bib of [1, 2]) expect(await attemptsOf(heir, bib)).toBe(0);
  await turnOnAt(heir, portOf(url));
  for (const bib of [1, 2]) {
    await expect.poll(() => attemptsOf(heir, bib), { message: `bib ${bib}` }).toBe(1);
  }
  for (const each of [page, program]) await expect(each.getByText(/sent entries saved/)).toBeVisible();
  await context.close();
});

const portOf = (url: string) => Number(new URL(url).port);
const passphrase = "forty wet wheels on maple";

async function backUpTo(stick: string, { app, desk }: Tapeline): Promise<void> {
  await chooseStick(stick, { app, desk });
  await callDoor(desk, "backups.setPassphrase", { passphrase });
  await callDoor(desk, "backups.now");
}

/** Restores the newest backup of the stick at a laptop that has nothing yet. */
async function restoreFrom(stick: string, desk: Page, { launched }: Laptop): Promise<void> {
  await chooseStick(stick, { app: launched.app, desk });
  const { backups } = (await readDoor(desk, "backups.list")) as {
    readonly backups: readonly { readonly name: string; readonly locked: boolean }[];
  };
  const newest = backups.find(({ locked }) => locked);
  await callDoor(desk, "backups.restore", { place: "second", name: newest?.name, passphrase });
}

async function chooseStick(stick: string, { app, desk }: Pick<Tapeline, "app" | "desk">): Promise<void> {
  await answerOpenDialog({ app }, stick);
  await desk.evaluate(() => {
    location.hash = "/";
  });
  const second = desk.getByRole("region", { name: "On a USB stick or in a second folder" });
  await second.getByRole("button", { name: "Choose a second folder" }).click();
  await expect(second).toContainText(stick);
}
