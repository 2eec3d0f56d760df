import { type Browser, type BrowserContext, chromium, type Page } from "@playwright/test";
import { hasCommand, isRoot } from "../../electron/runtime/host.ts";
import { installPackages } from "../../electron/runtime/packages.ts";

/** Starts the system's own Chromium, which is far newer than the one inside the program; installs it where it can. */
export async function startChromium(more: readonly string[] = []): Promise<Browser> {
  const missing = async () => (hasCommand("chromium") ? undefined : "The tests of devices need Chromium");
  await installPackages(["chromium"], missing, console.log);
  // Chromium's sandbox does not start as root.
  return chromium.launch({
    executablePath: "/usr/bin/chromium",
    args: [...(isRoot() ? ["--no-sandbox"] : []), ...more],
  });
}

/** A device of its own: nothing of another's cookies or storage. */
export interface Device {
  readonly context: BrowserContext;
  readonly page: Page;
  /** What the browser complained about: broken policies, faults of the page. */
  readonly complaints: string[];
}

interface DeviceKind {
  /** What its browser speaks; English if left out. */
  readonly locale?: string;
  /** A phone or a tablet: fingers alone, no pointer that hovers. */
  readonly isMobile?: boolean;
}

/** Opens a device that has accepted the browser's warning about the table's certificate. */
export async function openDevice(
  browser: Browser,
  width: number,
  height: number,
  { locale = "en-GB", isMobile = false }: DeviceKind = {},
): Promise<Device> {
  const viewport = { width, height };
  const context = await browser.newContext({
    viewport,
    hasTouch: true,
    ignoreHTTPSErrors: true,
    ...{ locale, isMobile },
  });
  context.setDefaultTimeout(120_000);
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on("pageerror", ({ message }) => complaints.push(message));
  page.on("console", (message) => {
    if (/Content Security|Refused|violates/.test(message.text())) complaints.push(message.text());
  });
  return { context, page, complaints };
}
