import { basename } from "node:path";
import { type BrowserWindow, dialog, ipcMain, screen, type WebFrameMain } from "electron";
import { z } from "zod";
import { writeWholeFiles } from "../../files/whole.ts";
import type { DeskLock } from "../../lock/desk-lock.ts";
import { belongsTo } from "../scheme/hosts.ts";
import type { Windows } from "../windows/windows.ts";
import type { Bridge, DisplayInfo, ReportFile, SaveOutcome } from "./bridge-types.ts";
import { cancelPaper, paperProgress } from "./paper-job.ts";
import { Cancelled, pdfOf, printPage } from "./print.ts";
import { readSheet } from "./read-sheet.ts";
import { whyNotSaved } from "./save-file.ts";

/** More than any sheet or bundle of a day; a page that asks for more is not ours. */
const largestFile = 256 * 1024 * 1024;

const suggestedName = z
  .string()
  .max(120)
  // A bare name: no folders, no control characters, nothing a system reads as a device or a drive.
  .regex(/^[^\p{Cc}\\/:*?"<>|]+$/u)
  .refine((name) => !name.startsWith("."));
const fileToSave = z.strictObject({
  suggestedName,
  bytes: z.instanceof(Uint8Array).refine((bytes) => bytes.length <= largestFile),
});
const pageToPrint = z.strictObject({
  // Only the desk's print pages: no query, no dots, no parent folder.
  path: z
    .string()
    .max(120)
    .regex(/^\/print(?:\/[A-Za-z0-9-]+)+$/),
  paper: z.enum(["a4", "letter", "a5", "half-letter", "a4-two", "letter-two"]),
});
const pageToSave = pageToPrint.extend({ suggestedName });
const nothing = z.undefined();

/** Answers the desk's page. Checks every call: the page that sends it, that the organiser is there, its input. */
export function setupBridge(windows: Windows, lock: DeskLock, report: () => Promise<ReportFile[]>): void {
  const mayAsk = () => isOrganiser(lock);
  const answer = answering(mayAsk);
  answer("saveFile", fileToSave, (file) =>
    save(windows.desk(), mayAsk, file.suggestedName, () => Promise.resolve(file.bytes)),
  );
  answer("savePdf", pageToSave, (page) =>
    save(windows.desk(), mayAsk, page.suggestedName, () => pdfOf(page)),
  );
  answer("print", pageToPrint, (page) => printPage(windows.desk(), page));
  answer("paperProgress", nothing, () => paperProgress());
  answer("cancelPaper", nothing, () => cancelPaper());
  answer("openSheet", nothing, async () => {
    const sheet = await openSheet(windows.desk());
    // A dialog may have been open while the desk was locked; its result is then dropped.
    return mayAsk() ? sheet : null;
  });
  answer("openBoard", nothing, () => windows.openBoard());
  answer("closeBoard", nothing, () => windows.closeBoard());
  answer("boardOpen", nothing, () => windows.boardOpen());
  answer("displays", nothing, () => displays());
  answer("report", nothing, report);
}

/** True if the organiser is at the desk, not somebody to whom it was handed over. */
export function isOrganiser(lock: DeskLock): boolean {
  return lock.who().role === "organiser";
}

function answering(mayAsk: () => boolean) {
  return function answer<Method extends keyof Bridge, Input>(
    method: Method,
    input: z.ZodType<Input>,
    run: (input: Input) => ReturnType<Bridge[Method]> | Awaited<ReturnType<Bridge[Method]>>,
  ): void {
    ipcMain.handle(`bridge:${method}`, (event, sent: unknown) => {
      if (!isDeskPage(event.senderFrame)) throw new Error("Only the desk's page may ask this.");
      if (!mayAsk()) throw new Error("Only the organiser may ask this.");
      return run(input.parse(sent));
    });
  };
}

/** True if a message comes from the desk's own page, not from a frame in it or another window. */
export function isDeskPage(frame: WebFrameMain | null): boolean {
  return frame !== null && frame.parent === null && belongsTo("desk", frame.url);
}

/** Asks where to save; makes the bytes only once there is an answer. */
async function save(
  window: BrowserWindow,
  mayAsk: () => boolean,
  name: string,
  bytes: () => Promise<Uint8Array>,
): Promise<SaveOutcome> {
  const { canceled, filePath } = await dialog.showSaveDialog(window, { defaultPath: name });
  if (canceled || filePath === "" || !mayAsk()) return { saved: false, why: "cancelled" };
  try {
    await writeWholeFiles([{ path: filePath, content: await bytes() }]);
    return { saved: true, name: basename(filePath) };
  } catch (error) {
    if (error instanceof Cancelled) return { saved: false, why: "cancelled" };
    console.error("The file can't be saved:", error);
    return { saved: false, why: whyNotSaved(error) };
  }
}

async function openSheet(window: BrowserWindow) {
  const { canceled, filePaths } = await dialog.showOpenDialog(window, { properties: ["openFile"] });
  const [file] = filePaths;
  return canceled || file === undefined ? null : readSheet(file);
}

function displays(): DisplayInfo[] {
  const primary = screen.getPrimaryDisplay().id;
  return screen.getAllDisplays().map(({ id, label, size }) => ({
    id,
    label,
    width: size.width,
    height: size.height,
    primary: id === primary,
  }));
}
