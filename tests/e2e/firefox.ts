import { type Browser, launch, type Page } from "puppeteer-core";
import { hasCommand } from "../../electron/runtime/host.ts";
import { installPackages } from "../../electron/runtime/packages.ts";

/** When something is given up that never comes, in ms: far more than it takes on a small machine that does other things too. */
const LIMIT_MS = 120_000;

/** Starts the system's own Firefox, the long-lived one of Debian, over WebDriver BiDi (W3C); installs it where it can. */
export async function startFirefox(): Promise<Browser> {
  const missing = async () => (hasCommand("firefox-esr") ? undefined : "The tests of devices need Firefox");
  await installPackages(["firefox-esr"], missing, console.log);
  return launch({
    browser: "firefox",
    executablePath: "/usr/bin/firefox-esr",
    // A device has accepted the browser's warning about the table's certificate.
    acceptInsecureCerts: true,
    // Firefox is slow to begin where several others do.
    ...{ headless: true, timeout: LIMIT_MS, protocolTimeout: LIMIT_MS },
    extraPrefsFirefox: { "intl.accept_languages": "en-GB, en", "intl.locale.requested": "en-GB" },
  });
}

/** A device of its own: nothing of another's cookies or storage. */
export interface FirefoxDevice {
  readonly page: Page;
  /** What the browser complained about: broken policies, faults of the page. */
  readonly complaints: string[];
  close(): Promise<void>;
}

/** Opens a device with a page of that size. */
export async function openFirefoxDevice(
  browser: Browser,
  width: number,
  height: number,
): Promise<FirefoxDevice> {
  const context = await browser.createBrowserContext();
  // A window of its own: of several pages in one, all but one lie behind it, and no device does.
  const page = await context.newPage({ type: "window" });
  page.setDefaultTimeout(LIMIT_MS);
  await page.setViewport({ width, height });
  const complaints: string[] = [];
  page.on("pageerror", (error) => complaints.push(String(error)));
  page.on("console", (message) => {
    if (/Content.Security|blocked|violates/i.test(message.text())) complaints.push(message.text());
  });
  return { page, complaints, close: () => context.close() };
}

/** Presses what has that name, as its tree for screen readers has it. */
export const press = (page: Page, name: string) => page.locator(`aria/${name}[role="button"]`).click();

/** Writes into the field of that name. */
export const write = (page: Page, name: string, text: string) =>
  page.locator(`aria/${name}[role="textbox"]`).fill(text);
