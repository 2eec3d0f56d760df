import { expect, type Page } from "@playwright/test";
import { openDevice } from "./browsers.ts";
import { test } from "./devices.ts";
import { englishOn } from "./english.ts";
import { letIn, openDemoTable, readCode } from "./joining.ts";
import { callDoor } from "./page.ts";

const speaks = (page: Page, language: string) =>
  expect(page.locator("html")).toHaveAttribute("lang", language);

test("a phone speaks its owner's language from joining on, chooses another for itself alone, and keeps that", async ({
  tapeline,
  chromium,
}) => {
  const { desk } = tapeline;
  const url = await openDemoTable(tapeline);
  const { page, context } = await openDevice(chromium, 360, 640, { locale: "es-ES" });
  await test.step("joins in Spanish at a table that speaks English", async () => {
    const code = await readCode(desk);
    await page.goto(url);
    await speaks(page, "es");
    expect(await englishOn(page)).toEqual([]);
    await page.getByRole("button", { name: "English" }).click();
    await page.getByRole("heading", { name: "Join the testing day" }).waitFor();
    await page.getByRole("button", { name: "Español" }).click();
    await page.getByLabel("Código").fill(code);
    await page.getByLabel("Nombre de este dispositivo").fill("Red phone");
    await page.getByRole("button", { name: "Pedir unirse" }).click();
    await letIn(desk, "Red phone", "Core");
    await page.getByRole("button", { name: /^Desde papel/ }).waitFor();
  });
  await speaks(page, "es");
  await speaks(desk, "en");
  // The title is text that the table stored.
  expect(await englishOn(page)).toEqual(["Demo day ({{count}} day)"]);
  await test.step("English for this phone alone, also when it is loaded anew", async () => {
    await page.getByRole("button", { name: "English" }).click();
    await page.getByRole("button", { name: /^Enter from paper/ }).waitFor();
    await callDoor(desk, "language.choose", { language: "es" });
    await speaks(desk, "es");
    await page.reload();
    await page.getByRole("button", { name: /^Enter from paper/ }).waitFor();
    await speaks(page, "en");
  });
  await context.close();
});

test("a television speaks as the table does, whatever its browser speaks, and so does a phone of another language", async ({
  tapeline,
  chromium,
}) => {
  const { desk } = tapeline;
  const url = await openDemoTable(tapeline);
  const join = async (name: string, place: string, locale: string) => {
    const device = await openDevice(chromium, 1024, 768, { locale });
    const code = await readCode(desk);
    await device.page.goto(url);
    await device.page.getByRole("textbox").first().fill(code);
    await device.page.getByRole("textbox").last().fill(name);
    await device.page.locator("button[type=submit]").click();
    await letIn(desk, name, place);
    await device.page.locator('html[data-ready="true"]').waitFor();
    return device;
  };
  const television = await join("Hall television", "Big screen", "es-ES");
  const basque = await join("Basque phone", "Core", "eu-ES");
  await expect(television.page.locator("html")).toHaveAttribute("data-theme", "hall");
  await expect(basque.page.getByText("Core only")).toBeAttached();
  await speaks(television.page, "en");
  await speaks(basque.page, "en");
  await callDoor(desk, "language.choose", { language: "es" });
  await speaks(television.page, "es");
  await speaks(basque.page, "es");
  await television.context.close();
  await basque.context.close();
});
