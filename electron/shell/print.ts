import { BrowserWindow, type WebContents } from "electron";
import type { PageToPrint, PrintOutcome } from "./bridge-types.ts";
import { originOf } from "./hosts.ts";
import { preferencesOf } from "./preferences.ts";

/** Far more than a page takes on a slow machine; after it the page will not come. */
const readyLimitMs = 15_000;

const paperNames = { a4: "A4", letter: "Letter" } as const;

/** The page as a PDF: text stays text, and the page's own CSS says the size. Rejects when it can't be laid out. */
export function pdfOf(page: PageToPrint): Promise<Uint8Array> {
  return withPage(page, undefined, (contents) =>
    contents.printToPDF({
      pageSize: paperNames[page.paper],
      preferCSSPageSize: true,
      printBackground: true,
      // Headings and lists stay headings and lists for those who listen to the file.
      generateTaggedPDF: true,
    }),
  );
}

/** Opens the system's print dialog over `desk`; resolves when the person has printed or thought better of it. */
export async function printPage(desk: BrowserWindow, page: PageToPrint): Promise<PrintOutcome> {
  try {
    return await withPage(page, desk, (contents) => askAndPrint(contents, page));
  } catch (error) {
    console.error("The page can't be printed:", error);
    return { printed: false, why: "failed" };
  }
}

function askAndPrint(contents: WebContents, { paper }: PageToPrint): Promise<PrintOutcome> {
  // The page keeps its own margins; the printer's would come on top.
  const options = {
    printBackground: true,
    pageSize: paperNames[paper],
    margins: { marginType: "none" },
  } as const;
  return new Promise((resolve) => {
    contents.print(options, (printed, reason) => {
      if (printed) return resolve({ printed: true });
      const cancelled = /cancel/i.test(reason);
      if (!cancelled) console.error("The system does not print:", reason);
      resolve({ printed: false, why: cancelled ? "cancelled" : "failed" });
    });
  });
}

/** Shows a print page in a window that nobody sees, and closes it whatever comes of `work`. */
async function withPage<Result>(
  { path, paper }: PageToPrint,
  parent: BrowserWindow | undefined,
  work: (contents: WebContents) => Promise<Result>,
): Promise<Result> {
  const window = new BrowserWindow({
    show: false,
    ...(parent !== undefined && { parent }),
    // No preload script: a page on paper asks the shell for nothing. A window out of sight must not be slowed down.
    webPreferences: { ...preferencesOf("desk"), backgroundThrottling: false },
  });
  try {
    await window.loadURL(`${originOf("desk")}/#${path}/${paper}`);
    await untilReady(window.webContents);
    return await work(window.webContents);
  } finally {
    if (!window.isDestroyed()) window.destroy();
  }
}

/** Waits until the page says that it shows all it is for (`useReady`). */
async function untilReady(contents: WebContents): Promise<void> {
  const end = Date.now() + readyLimitMs;
  while (!(await contents.executeJavaScript("document.documentElement.dataset.ready === 'true'"))) {
    if (Date.now() > end) throw new Error(`${contents.getURL()} did not get ready.`);
    await new Promise((resolve) => setTimeout(resolve, 25));
  }
}
