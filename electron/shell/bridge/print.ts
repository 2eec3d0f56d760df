import { BrowserWindow, type WebContents } from "electron";
import { originOf } from "../scheme/hosts.ts";
import { preferencesOf } from "../windows/preferences.ts";
import type { PageToPrint, PrintOutcome, PrintPaper } from "./bridge-types.ts";
import { type Job, startJob } from "./paper-job.ts";

/** Far more than a page takes on a slow computer, in ms; after that long without progress the page will not come. */
const readyLimitMs = 60_000;
const lookEveryMs = 40;

interface Sheet {
  /** A name that Chromium knows, or inches. */
  readonly size: "A4" | "A5" | "Letter" | { readonly width: number; readonly height: number };
  readonly landscape: boolean;
}

/** The sheet of paper in the printer; two-up is two upright cards side by side on a landscape sheet. */
const sheets: Readonly<Record<PrintPaper, Sheet>> = {
  a4: { size: "A4", landscape: false },
  letter: { size: "Letter", landscape: false },
  a5: { size: "A5", landscape: false },
  "half-letter": { size: { width: 5.5, height: 8.5 }, landscape: false },
  "a4-two": { size: "A4", landscape: true },
  "letter-two": { size: "Letter", landscape: true },
};

/**
 * Makes a PDF of the page: text stays text, and the page's own CSS sets the size. Rejects when it can't be laid out,
 * and with `Cancelled` when somebody cancels.
 */
export function pdfOf(page: PageToPrint): Promise<Uint8Array> {
  const { size, landscape } = sheets[page.paper];
  return withPage(page, undefined, (contents) =>
    contents.printToPDF({
      pageSize: size,
      landscape,
      preferCSSPageSize: true,
      printBackground: true,
      // Headings and lists stay headings and lists for screen readers.
      generateTaggedPDF: true,
    }),
  );
}

/** Opens the system's print dialog over `desk`; resolves when the person has printed or cancelled. */
export async function printPage(desk: BrowserWindow, page: PageToPrint): Promise<PrintOutcome> {
  try {
    return await withPage(page, desk, (contents) => askAndPrint(contents, page));
  } catch (error) {
    if (error instanceof Cancelled) return { printed: false, why: "cancelled" };
    console.error("The page can't be printed:", error);
    return { printed: false, why: "failed" };
  }
}

/** Thrown when somebody cancelled the job. */
export class Cancelled extends Error {}

function askAndPrint(contents: WebContents, { paper }: PageToPrint): Promise<PrintOutcome> {
  const { size, landscape } = sheets[paper];
  // The page has its own margins; the printer's would be added to them.
  const options = {
    printBackground: true,
    pageSize: typeof size === "string" ? size : micronsOf(size),
    margins: { marginType: "none" },
    ...(landscape && { landscape }),
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

/** Converts a paper size to µm, as printers need it without a name; 1 in = 25 400 µm. */
function micronsOf({ width, height }: { readonly width: number; readonly height: number }) {
  return { width: width * 25_400, height: height * 25_400 };
}

/** Shows a print page in a hidden window, and closes it whatever the outcome of `work`. */
async function withPage<Result>(
  { path, paper }: PageToPrint,
  parent: BrowserWindow | undefined,
  work: (contents: WebContents) => Promise<Result>,
): Promise<Result> {
  const window = new BrowserWindow({
    show: false,
    ...(parent !== undefined && { parent }),
    // No preload script: a page on paper asks the shell for nothing. A hidden window must not be throttled.
    webPreferences: { ...preferencesOf("desk"), backgroundThrottling: false },
  });
  const job = startJob();
  try {
    // A call to a closed window may never be answered, so wait for the events that end the job early, too.
    return await Promise.race([run(), stopped(job), crashed(window.webContents)]);
  } finally {
    job.end();
    if (!window.isDestroyed()) window.destroy();
  }

  async function run(): Promise<Result> {
    await window.loadURL(`${originOf("desk")}/#${path}/${paper}`);
    await untilReady(window.webContents, job);
    job.tell({ phase: "file" });
    return await work(window.webContents);
  }
}

async function stopped(job: Job): Promise<never> {
  await job.cancelled;
  throw new Cancelled("The job was cancelled.");
}

function crashed(contents: WebContents): Promise<never> {
  return new Promise((_resolve, reject) => {
    contents.once("render-process-gone", (_event, { reason }) =>
      reject(new Error(`The page is gone: ${reason}.`)),
    );
  });
}

/** Reads a print page's state: ready (`useReady`), or else its progress (`useLaidOut`). */
const askPage = `(({ dataset: { ready, done, total } }) =>
  ({ ready: ready === "true", done: Number(done ?? 0), total: Number(total ?? 0) }))(document.documentElement)`;

/** Waits until the page says it is complete, as long as it makes progress. */
async function untilReady(contents: WebContents, job: Job): Promise<void> {
  let [farthest, since] = [0, Date.now()];
  for (;;) {
    const { ready, done, total } = await contents.executeJavaScript(askPage);
    job.tell({ done, total });
    if (ready) return;
    if (done > farthest) [farthest, since] = [done, Date.now()];
    if (Date.now() - since > readyLimitMs) throw new Error(`${contents.getURL()} did not get ready.`);
    await new Promise((resolve) => setTimeout(resolve, lookEveryMs));
  }
}
