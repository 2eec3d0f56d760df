import { rmSync, statSync } from "node:fs";
import { join } from "node:path";
import { app, type BrowserWindow, powerSaveBlocker } from "electron";
import { closeWithBackup, keepBackedUp } from "./api/backups/every.ts";
import type { Desk } from "./api/door/desk.ts";
import { say } from "./api/door/words.ts";
import { createHandler, type Handle } from "./api/handler.ts";
import { createDesk } from "./api/make-desk.ts";
import { prepareDevice } from "./as-device.ts";
import { createRecovery } from "./backups/recovery.ts";
import { isForRoom } from "./backups/trouble.ts";
import { callerAt } from "./domain/devices/place.ts";
import { languageFor } from "./domain/languages.ts";
import { backupsApart } from "./host/backup-work.ts";
import { createCalculator } from "./host/calculator.ts";
import { unpredictable } from "./host/chance.ts";
import { demoSheetsIn } from "./host/demo-sheets.ts";
import { keptLanguage } from "./host/language.ts";
import { lockFiles } from "./host/lock-files.ts";
import { isJoined } from "./host/membership-files.ts";
import { monotonic } from "./host/monotonic.ts";
import { networkFiles } from "./host/network-files.ts";
import { examineApart, lookAgainApart } from "./host/store-checks.ts";
import { ownStore, storeOpener } from "./host/stores.ts";
import { rehearser } from "./rehearsal/at-the-desk.ts";
import { setupBridge } from "./shell/bridge/bridge.ts";
import { setupBackupBridge } from "./shell/bridge/bridge-backups.ts";
import { type Folders, setupFolders } from "./shell/folders.ts";
import { setupForTests } from "./shell/for-tests.ts";
import { type Log, openLog } from "./shell/log/log.ts";
import { noteStart, watchForFaults } from "./shell/log/log-watch.ts";
import { reportFiles } from "./shell/log/report.ts";
import { type Answer, createAnswer } from "./shell/scheme/answer.ts";
import { type BuildFiles, listBuildFiles } from "./shell/scheme/build-files.ts";
import { setupGuard } from "./shell/scheme/guard.ts";
import { withSecurityHeaders } from "./shell/scheme/headers.ts";
import { originOf } from "./shell/scheme/hosts.ts";
import { setupNoNetwork } from "./shell/scheme/network.ts";
import { registerScheme, serveHost } from "./shell/scheme/scheme.ts";
import { selfCheck } from "./shell/self-check/self-check.ts";
import { createRecoveryAnswer } from "./shell/trouble/recovering.ts";
import { createRefusedAnswer } from "./shell/trouble/refused-page.ts";
import { createStarting, type Starting } from "./shell/trouble/starting.ts";
import { refusedSwitch, wantsSelfCheck } from "./shell/trouble/switches.ts";
import { keepAwake } from "./shell/windows/keep-awake.ts";
import { setupKiosk } from "./shell/windows/kiosk.ts";
import { setMenu } from "./shell/windows/menu.ts";
import { bringToFront, openDeskAlone, openWindows } from "./shell/windows/windows.ts";
import { setupZoomKeys } from "./shell/windows/zoom.ts";
import { shellLanguage, shellText, speakIn } from "./shell/words.ts";
import type { StoreLocation } from "./store/connection/connect.ts";
import { type Examined, examine } from "./store/connection/examine.ts";
import { StoreRefused } from "./store/connection/refused.ts";

const systemLanguage = () => languageFor(app.getPreferredSystemLanguages());
speakIn(systemLanguage);
const refused = refusedSwitch();
if (refused !== undefined) {
  console.error(shellText("switches.refused", { name: refused }));
  // At once: no window and no store may exist before.
  process.exit(64);
}
const folders = setupFolders();
const language = keptLanguage(folders.data, systemLanguage);
speakIn(language.now);
const log = openLog(folders.log, () => new Date());
const kiosk = setupKiosk();
if (app.requestSingleInstanceLock()) {
  watchForFaults(log);
  noteStart(log);
  setupNoNetwork();
  registerScheme();
  setupGuard();
  setMenu(false);
  setupZoomKeys(kiosk.isShut);
  setupForTests();
  // Not awaited: Electron is ready only after this file has run to its end.
  app
    .whenReady()
    .then(() => start(folders), fail)
    .catch(fail);
} else {
  // The running app comes to the front.
  app.quit();
}

/** Opens the desk's window at once, and the store once it was examined beside it: nothing is entered before. */
async function start(folders: Folders): Promise<void> {
  const location = ownStore(folders.data, nativeBinding);
  const bytes = statSync(location.file, { throwIfNoEntry: false })?.size ?? 0;
  const starting = createStarting({ bytes, ms: () => monotonic().ms });
  serveHost("desk", starting.answer);
  // A laptop that is another one's device shows the device from the beginning.
  const window = isJoined(folders.data) ? undefined : openDeskAlone();
  const begun = { starting, window };
  const examined = await examination(location, bytes, starting).catch((trouble: unknown) => ({
    trouble,
  }));
  // Whoever closed the window meanwhile has ended the program.
  if (window?.isDestroyed() === true) return;
  const opened = "trouble" in examined ? examined : openDesk(folders, { examined });
  noteStore(log, opened);
  if ("trouble" in opened) return showTrouble(folders, opened.trouble, begun);
  await run(folders, opened.desk, begun);
  if (!("trouble" in examined) && examined.toLookAgain) await lookOnceMore(folders, opened.desk);
}

/** Bytes of a store up to which a thread would take longer to begin than the store to be examined. */
const smallStore = 2e6;

/** Examines the store beside the window; here where there is next to nothing to examine. @throws StoreRefused */
async function examination(location: StoreLocation, bytes: number, { tell }: Starting): Promise<Examined> {
  if (bytes > smallStore) return examineApart(location, tell, storeThread);
  return examine(location, { trustSeal: true, told: tell });
}

/** What was begun before the store was open. */
interface Begun {
  readonly starting: Starting;
  /** The desk's window; undefined where this program is another one's device. */
  readonly window: BrowserWindow | undefined;
}

/** Answers the desk's host by this from now on; a page that said what was being checked makes room for what comes. */
function serveDesk(answer: Answer, begun: Begun | null): void {
  serveHost("desk", answer);
  // Reloaded from here: a page of a desk that is shut leads nowhere by itself.
  if (begun?.starting.hand(answer) === true) begun.window?.reload();
}

/** Looks at the content of a store whose seal was proved, behind the entries; a fault of our own would show here. */
async function lookOnceMore(folders: Folders, desk: Desk): Promise<void> {
  const { store } = desk;
  const entersAgain = store.rest();
  try {
    const damage = await lookAgainApart(ownStore(folders.data, nativeBinding), storeThread);
    log.note({ what: "store", is: damage === null ? "checked" : "damaged" });
    if (damage === null) return;
    console.error("The store's content is not whole:", damage);
    // Nothing more goes into it: the next start finds the same before it opens it, and shows what can be done.
    app.relaunch();
    app.exit(0);
  } catch (error) {
    // Its seal was proved, and a day goes on with that: that this look failed says nothing about the store.
    log.note({ what: "store", is: "unchecked" });
    console.error("The store's content could not be looked at again:", error);
  } finally {
    entersAgain();
  }
}

/** Serves the app from an open desk, in the window that was opened before it. */
async function run(folders: Folders, desk: Desk, begun: Begun): Promise<void> {
  const { window } = begun;
  const letSleep = keepAwake(desk, powerSaveBlocker);
  const stopBackups = keepBackedUp(desk);
  let closed = false;
  app.on("will-quit", (event) => {
    if (closed) return;
    closed = true;
    // The last backup takes a moment; then the app ends by itself. Not before this event is over: it would be lost.
    event.preventDefault();
    letSleep();
    stopBackups();
    void closeWithBackup(desk).finally(() => setTimeout(() => app.quit(), 0));
  });
  const handle = createHandler(desk, (error) => console.error(error));
  const files = await listBuildFiles(folders.renderer);
  const device = prepareDevice(desk, folders.data, files);
  serveHost("board", createAnswer("board", files, handle));
  openToDevices(desk, handle, files);
  const windows = openWindows(window === undefined ? device.host() : "desk", window);
  setupBackupBridge(windows, desk);
  setupBridge(windows, desk.lock, () => reportFiles({ desk, log, data: folders.data }));
  kiosk.follow(desk, windows);
  device.follow(windows);
  // Last: a desk that was handed over is shut before it shows anything.
  serveDesk(createAnswer("desk", files, handle, desk.lock.who, device.membership.answerDesk), begun);
  app.on("second-instance", () => bringToFront(windows.desk()));
  if (wantsSelfCheck()) app.exit((await selfCheck(windows, log, console.log)) ? 0 : 1);
}

/** Hands the network the same door and the same pages; nothing listens before the organiser turns it on. */
function openToDevices(desk: Desk, handle: Handle, files: BuildFiles): void {
  desk.network?.carry({
    files,
    handle(request, device) {
      const { role, station } = callerAt(device.place);
      return handle(request, role, station, device);
    },
    withHeaders: withSecurityHeaders,
    report: (error) => console.error(error),
  });
  void desk.network?.resume();
}

// Only a runtime found for development needs a library of its own; a packaged app never loads one by name.
const nativeBinding = app.isPackaged ? undefined : process.env.TAPELINE_SQLITE_BINDING;

/** Where the build puts the threads of `host/`: beside this file. */
const threadFile = join(import.meta.dirname, "calculator-thread.js");
const backupThread = join(import.meta.dirname, "backup-thread.js");
const storeThread = join(import.meta.dirname, "store-thread.js");

/** `accepted`: a person has read the doubts about the store, and wants it as it is. */
function openDesk(
  folders: Folders,
  { accepted = false, examined }: { accepted?: boolean; examined?: Examined },
): { desk: Desk } | { trouble: unknown } {
  try {
    const open = storeOpener(folders.data, nativeBinding, accepted, examined);
    const backups = ownStore(folders.data, nativeBinding);
    const demoSheets = demoSheetsIn(folders.demo);
    const lock = lockFiles(folders.data);
    const now = () => new Date();
    const folder = emptied(folders.rehearsals);
    const rehearse = rehearser({ folder, nativeBinding, demoSheets, language, threadFile }, now);
    return {
      desk: createDesk({
        open,
        now,
        monotonic,
        random: unpredictable,
        demoSheets,
        rehearse,
        calculator: createCalculator(threadFile),
        backups,
        backupWork: backupsApart(backupThread),
        language,
        lock,
        network: networkFiles(folders.data),
      }),
    };
  } catch (trouble) {
    return { trouble };
  }
}

/** Empties a folder: a rehearsal that a power cut ended in an earlier run left people's names. */
function emptied(folder: string): string {
  rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  return folder;
}

function noteStore(log: Log, opened: { desk: Desk } | { trouble: unknown }): void {
  const trouble = "trouble" in opened ? opened.trouble : undefined;
  const reason = trouble instanceof StoreRefused ? trouble.reason : "unopened";
  log.note({ what: "store", is: "desk" in opened ? "opened" : reason });
}

/** Shows why there is no store to work with; for a refused one, with the possible actions. */
function showTrouble(folders: Folders, trouble: unknown, begun: Begun): void {
  console.error("The store can't be opened:", trouble);
  const why = whyNotOpened(trouble);
  const location = ownStore(folders.data, nativeBinding);
  const where = shellText("refused.where", { file: location.file });
  const help = shellText("refused.help", { folder: folders.log });
  const plain = createRefusedAnswer({ title: shellText("refused.title"), lines: [why, where, help] });
  const answer =
    trouble instanceof StoreRefused
      ? createRecoveryAnswer({
          recovery: createRecovery(location, trouble, () => new Date()),
          why,
          where: [where, help],
          window: () => window,
          done: (accepted) => startAgain(folders, { ...begun, window }, accepted),
        })
      : plain;
  const window = begun.window ?? openDeskAlone();
  serveDesk(answer, begun);
  app.on("second-instance", () => bringToFront(window));
}

function whyNotOpened(trouble: unknown): string {
  if (trouble instanceof StoreRefused) return say(trouble.sentence, shellLanguage());
  if (isForRoom(trouble)) return shellText("refused.full");
  return shellText("refused.other", {
    message: trouble instanceof Error ? trouble.message : String(trouble),
  });
}

/** Opens the store as a person decided, and shows the app in the existing window. */
async function startAgain(folders: Folders, begun: Begun, accepted: boolean): Promise<void> {
  const opened = openDesk(folders, { accepted });
  if ("trouble" in opened) throw opened.trouble;
  await run(folders, opened.desk, begun);
  // A program that is a device has another window by now.
  if (begun.window?.isDestroyed() === false) await begun.window.loadURL(originOf("desk"));
}

/** Reports an impossible fault during the start to the terminal, and ends. */
function fail(error: unknown): void {
  console.error(error);
  app.exit(1);
}
