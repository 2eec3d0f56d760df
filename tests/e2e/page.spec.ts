import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { expect, type Page, test } from "@playwright/test";
import { makeHandIn, readHandIn, writeHandIn } from "../../electron/domain/reference-table/hand-in.ts";
import { fingerprint } from "../../electron/domain/tests/fingerprint.ts";
import { defaultParameters } from "../../electron/domain/tests/registry.ts";
import { mostOfPage, writePage } from "../../electron/reference/page.ts";
import { bundleOfHall, hallsOf } from "../checks/table/sport.ts";
import { largeTable } from "../unit/reference/large-table.ts";
import { expectForEverybody } from "./axe.ts";
import { openDevice, startChromium } from "./browsers.ts";
import { openFirefoxDevice, startFirefox } from "./firefox.ts";
import { expectedOf, typeAll, typedOnce, who } from "./page-typed.ts";

/** The page for everybody in the system's own browsers, from a disk and from a server, with a table as large as any. */
const folder = mkdtempSync(join(tmpdir(), "tapeline-page-"));
const file = join(folder, "index.html");
const fromDisk = pathToFileURL(file).href;

test.beforeAll(async () => {
  await writePage(largeTable, folder);
});
test.afterAll(() => rmSync(folder, { recursive: true }));

const languages = [
  { locale: "en-GB", women: "Women", show: "Show what would be in the file", save: "Save this file" },
  {
    locale: "es-ES",
    women: "Mujeres",
    show: "Mostrar lo que habría en el archivo",
    save: "Guardar este archivo",
  },
] as const;

/** A word's key where a word should be: `push-up:station`, `about.title`. */
const bareKey = /^[a-z][\w-]*(?:[.:][\w-]+)+$/i;
/** The one text that only looks like one: minutes and seconds, as a time is typed. */
const timeUnit = "min:s";

/** Every text of the page but that of the file to hand in. */
function textsIn(): string[] {
  const main = document.querySelector("main") ?? document.body;
  const walker = document.createTreeWalker(main, NodeFilter.SHOW_TEXT);
  const texts: string[] = [];
  while (walker.nextNode()) {
    if (walker.currentNode.parentElement?.closest("pre") === null)
      texts.push(walker.currentNode.nodeValue ?? "");
  }
  return texts.map((text) => text.trim());
}

const fieldsOf = (page: Page, code: string) =>
  page.locator(`li[data-test="${code}"] input:not([type=radio])`);

/** Fills in all five tests, with a last result each. */
async function fillIn(page: Page, women: string): Promise<void> {
  await page.getByText(women, { exact: true }).click();
  await page.getByRole("combobox").selectOption({ index: 6 });
  const typed = {
    "push-up": ["27", "3", "20"],
    agility: ["7", "2", "1", "6", "3", "0", "26.5"],
    vertical: ["219", "258", "", "", "36"],
    core: ["2:25", "2:20"],
    endurance: ["6:12.4", "6:30"],
  };
  for (const [code, texts] of Object.entries(typed)) {
    for (const [at, text] of texts.entries()) await fieldsOf(page, code).nth(at).fill(text);
  }
}

/** What the browser keeps of a page: nothing, under this address or another. */
function kept(): unknown {
  const { href } = location;
  return {
    stored: [localStorage.length, sessionStorage.length, document.cookie.length],
    after: href.split(/[?#]/)[1],
  };
}

test("it is one file of less than 300 kB with the largest table, and the table's words run nothing", () => {
  expect(statSync(file).size).toBeLessThan(mostOfPage);
  const html = readFileSync(file, "utf8");
  expect(html.match(/<script/g)).toHaveLength(2);
  expect(html).not.toContain('onclick="x"');
  expect(html).not.toMatch(/<(?:link|img|iframe)[^>]+(?:href|src)="(?!data:,)/);
});

for (const { locale, women, show, save } of languages) {
  test(`it says where results stand and hands them in, on a phone and a laptop, in ${locale}`, async () => {
    const browser = await startChromium();
    for (const [width, height] of [
      [360, 640],
      [1280, 800],
    ] as const) {
      const { context, page, complaints } = await openDevice(browser, width, height, { locale });
      const asked: string[] = [];
      page.on("request", (request) => asked.push(request.url()));
      await page.goto(fromDisk);
      await expectForEverybody(page);
      await fillIn(page, women);
      await expect(page.locator("li[data-of] rect")).toHaveCount(20);
      await page.getByRole("button", { name: show }).click();
      await expectForEverybody(page);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
      expect(
        (await page.evaluate(textsIn)).filter((text) => bareKey.test(text) && text !== timeUnit),
      ).toEqual([]);
      const shown = (await page.locator("pre").textContent()) ?? "";
      const [download] = await Promise.all([
        page.waitForEvent("download"),
        page.getByRole("button", { name: save }).click(),
      ]);
      const saved = readFileSync(await download.path(), "utf8");
      expect(saved.trim()).toBe(shown.trim());
      const read = readHandIn(saved);
      const exact = [
        ["push-up", "full", 24],
        ["agility", "", 113],
        ["vertical", "", 7800],
        ["core", "", 145],
        ["endurance", "", 372_400],
      ] as const;
      const made = makeHandIn(
        { id: read.id, category: who.category, ageBand: who.ageBand },
        exact.map(([code, variant, value]) => ({
          ...{ test: code, variant, value },
          fingerprint: fingerprint(code, variant, defaultParameters(code)),
        })),
      );
      // To the byte: nothing else is in it.
      expect(saved).toBe(writeHandIn(made));
      expect(download.suggestedFilename()).toBe(`hand-in-${read.id}.json`);
      expect(await page.evaluate(kept)).toEqual({ stored: [0, 0, 0] });
      expect(asked.filter((url) => !url.startsWith("blob:"))).toEqual([fromDisk]);
      expect(complaints).toEqual([]);
      await context.close();
    }
    await browser.close();
  });
}

test("the command that makes a table writes the page with it", () => {
  const sent = join(folder, "sent");
  const [key, out, pages] = ["key.pem", "table.zip", "pages"].map((name) => join(folder, name));
  mkdirSync(sent);
  hallsOf(4, [40, 60], 4).forEach((hall, at) => {
    writeFileSync(join(sent, `${at}.zip`), bundleOfHall(hall, at));
  });
  const run = (...words: string[]) =>
    spawnSync(process.execPath, ["electron/merge-references.ts", ...words], { encoding: "utf8" });
  expect(run("--new-key", `${key}`).status).toBe(0);
  const signed = ["--key", `${key}`, "--publisher", "The harbour table"];
  const made = run(sent, "--out", `${out}`, ...signed, "--page", `${pages}`);
  expect(made.stderr).toBe("");
  expect(made.status).toBe(0);
  const page = readFileSync(join(`${pages}`, "index.html"), "utf8");
  expect(page).toContain('"publisher":"The harbour table"');
  expect(readdirSync(`${pages}`)).toEqual(["index.html"]);
});

test("what it shows of a thousand results is what the program's own functions say", {
  tag: "@sweep",
}, async () => {
  const browser = await startChromium();
  const { page } = await openDevice(browser, 1280, 800);
  await page.goto(fromDisk);
  await page.getByText("Women", { exact: true }).click();
  await page.getByRole("combobox").selectOption({ label: who.ageBand });
  const typed = Array.from({ length: 1000 }, (_none, at) => typedOnce(at));
  const shown = await page.evaluate(typeAll, typed);
  const expected = typed.map(expectedOf);
  expect(shown).toEqual(expected);
  expect(expected.filter(({ places }) => places.length === 4).length).toBeGreaterThan(600);
  await browser.close();
});

test("from a server it asks for itself once, and nothing else; its keyboard way goes through everything", async () => {
  const asked: string[] = [];
  const server = createServer((request, response) => {
    asked.push(request.url ?? "");
    response.setHeader("content-type", "text/html; charset=utf-8").end(readFileSync(file));
  }).listen(0, "127.0.0.1");
  await new Promise((resolve) => server.once("listening", resolve));
  const browser = await startChromium();
  const { page } = await openDevice(browser, 1280, 800);
  await page.goto(`http://127.0.0.1:${(server.address() as AddressInfo).port}/`);
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await page.keyboard.press("Tab");
  await page.keyboard.press("ArrowRight");
  await expect(page.getByRole("radio", { name: "On the knees" })).toBeChecked();
  await page.keyboard.press("Tab");
  await page.keyboard.type("30");
  await page.keyboard.press("Tab");
  await page.keyboard.type("2");
  await expect(page.locator('li[data-test="push-up"] li[data-of="everybody"] rect')).toHaveCount(1);
  await page.getByRole("button", { name: "Español" }).click();
  await expect(page.locator("html")).toHaveAttribute("lang", "es");
  await expect(fieldsOf(page, "push-up").first()).toHaveValue("30");
  expect(asked).toEqual(["/"]);
  await browser.close();
  server.close();
});

test("the instruction sheets are printed by themselves, each on its page", async () => {
  const browser = await startChromium();
  const { page } = await openDevice(browser, 1280, 800);
  await page.addInitScript(() => {
    window.print = () => {};
  });
  await page.goto(fromDisk);
  await page.getByRole("button", { name: "Print all six sheets" }).click();
  await expect(page.locator("article.print-sheet")).toHaveCount(6);
  const pdf = (await page.pdf({ preferCSSPageSize: true })).toString("latin1");
  expect(pdf.match(/\/Type\s*\/Page\b/g)).toHaveLength(6);
  await page.evaluate(() => window.dispatchEvent(new Event("afterprint")));
  await expect(page.locator("article.print-sheet")).toHaveCount(0);
  await browser.close();
});

test("Firefox shows the same, in both languages and sizes", async () => {
  const browser = await startFirefox();
  const axe = readFileSync("node_modules/axe-core/axe.min.js", "utf8");
  for (const [width, height] of [
    [360, 640],
    [1280, 800],
  ] as const) {
    const { page, complaints, close } = await openFirefoxDevice(browser, width, height);
    await page.goto(fromDisk);
    for (const language of ["en", "es"]) {
      if (language === "es") await page.locator("button[lang=es]").click();
      const typed = [0, 1, 2, 3, 4].map(typedOnce);
      const shown = await page.evaluate(typeAll, typed);
      const everybody = typed.map((each) => expectedOf(each).places.at(-1)?.split(" ").slice(1).join(" "));
      expect(shown.map(({ places }) => places.at(-1)?.split(" ").slice(1).join(" "))).toEqual(everybody);
      await page.evaluate(axe);
      const wrong = await page.evaluate("axe.run().then(({ violations }) => violations.map(({ id }) => id))");
      expect(wrong).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    }
    expect(await page.evaluate(kept)).toEqual({ stored: [0, 0, 0] });
    expect(complaints).toEqual([]);
    await close();
  }
  await browser.close();
});
