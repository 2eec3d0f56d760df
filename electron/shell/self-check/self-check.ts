import { app, BrowserWindow, type WebContents } from "electron";
import english from "../../../resources/locales/en/home.json" with { type: "json" };
import spanish from "../../../resources/locales/es/home.json" with { type: "json" };
import { pdfOf } from "../bridge/print.ts";
import type { Log } from "../log/log.ts";
import { blockedRequests } from "../scheme/guard.ts";
import type { Windows } from "../windows/windows.ts";
import { shellLanguage, shellText } from "../words.ts";
import { type CheckedPage, checkedPage } from "./page.ts";

/** The subjects of a check, in the order of its steps. */
interface Checked {
  readonly windows: Windows;
  readonly log: Log;
  readonly desk: CheckedPage;
}

type Step = readonly [name: string, work: (checked: Checked) => Promise<void>];

/** The main job in small; each step builds on the ones before. The names are keys of `shell.json`. */
const steps: readonly Step[] = [
  ["page", showsItsPage],
  ["alone", pageStandsAlone],
  ["demo", opensTheDemo],
  ["attempt", entersAnAttemptOnce],
  ["end", foreseesTheEnd],
  ["board", boardShowsIt],
  ["paper", laysOutPaper],
  ["bundle", writesABundle],
  ["outside", askedNothingOutside],
  ["log", logHasNoName],
];

/**
 * Runs `--self-check`: tries the program as it is on this computer, with its real windows, on an empty data folder that
 * is deleted afterwards. Prints a line for each step; true when all passed. A failing step ends the check.
 */
export async function selfCheck(windows: Windows, log: Log, print: (line: string) => void): Promise<boolean> {
  const checked = { windows, log, desk: checkedPage(windows.desk().webContents) };
  for (const [name, work] of steps) {
    try {
      await work(checked);
      print(`ok      ${shellText(`check.${name}`)}`);
    } catch (error) {
      print(
        `FAILED  ${shellText(`check.${name}`)}: ${error instanceof Error ? error.message : String(error)}`,
      );
      return false;
    }
  }
  print(shellText("check.allWell"));
  return true;
}

async function showsItsPage({ desk }: Checked): Promise<void> {
  await desk.until("document.documentElement.dataset.ready === 'true'");
  hold((await desk.read("location.origin")) === "app://desk");
}

async function pageStandsAlone({ desk }: Checked): Promise<void> {
  const reach =
    "['require', 'process', 'module', 'Buffer', 'global'].filter((name) => name in window).length";
  hold((await desk.read(reach)) === 0);
  // The tests' access to the main process exists only in development.
  hold((globalThis.tapelineForTests === undefined) === app.isPackaged);
  // Neither the policy nor the preload's own world runs a script written into the page.
  const written = `(() => { const script = document.createElement("script");
    try { script.textContent = "document.title = 'written in'"; } catch { return true; }
    document.body.append(script); script.remove(); return document.title !== "written in"; })()`;
  hold((await desk.read(written)) === true);
}

async function opensTheDemo({ desk }: Checked): Promise<void> {
  await desk.press({ en: english, es: spanish }[shellLanguage()].demo.open);
  await desk.until("location.hash === '#/day'");
  hold(((await desk.ask("day.current")) as { kind: string }).kind === "demo");
}

interface Overview {
  readonly tests: readonly { readonly test: string; readonly done: number }[];
}

/** One test is enough: the first, which everybody waits for. Far above any best, so that every athlete's is news. */
const reps = 180;

async function entersAnAttemptOnce({ desk }: Checked): Promise<void> {
  const station = (await desk.ask("station.view", { test: "push-up" })) as {
    readonly queue: readonly { readonly who: { readonly athleteId: number } }[];
  };
  const [next] = station.queue;
  if (next === undefined) throw new Error("Nobody waits for strength.");
  const id = await desk.read("crypto.randomUUID()");
  const entry = {
    ...{ athleteId: next.who.athleteId, test: "push-up", variant: "full", by: "QA", sure: true },
    attempts: [{ id, seen: { how: "tally", reps, offAtEnd: 0 } }],
  };
  const before = await done(desk);
  const answers = [await desk.tell("station.enter", entry), await desk.tell("station.enter", entry)];
  hold(answers.every((answer) => (answer as { outcome: string }).outcome === "saved"));
  hold((await done(desk)) === before + 1);
}

async function done(desk: CheckedPage): Promise<number> {
  const { tests } = (await desk.ask("day.overview")) as Overview;
  return tests.find(({ test }) => test === "push-up")?.done ?? 0;
}

/** In a thread of its own, whose code is another file of the program. */
async function foreseesTheEnd({ desk }: Checked): Promise<void> {
  const isTold =
    "fetch('/trpc/day.forecast').then(async (answer) => (await answer.json()).result.data.state === 'told')";
  await desk.until(isTold);
}

async function boardShowsIt({ windows }: Checked): Promise<void> {
  windows.openBoard();
  const board = checkedPage(besideDesk(windows));
  await board.until("location.host === 'board' && document.documentElement.dataset.ready === 'true'");
  hold((await board.read("'bridge' in window")) === false);
  const view = (await board.ask("board.view")) as { readonly totals: { readonly bests: number } };
  await board.until(`document.body.innerText.includes("${view.totals.bests}")`);
}

async function laysOutPaper(): Promise<void> {
  const pdf = Buffer.from(await pdfOf({ path: "/print/instructions/core", paper: "a4" }));
  hold(pdf.subarray(0, 5).toString("latin1") === "%PDF-" && pdf.length > 10_000);
}

async function writesABundle({ desk }: Checked): Promise<void> {
  const { day } = (await desk.ask("day.current")) as { readonly day: { readonly id: number } };
  const { sha256 } = (await desk.ask("bundle.preview", { dayId: day.id })) as { readonly sha256: string };
  const file = (await desk.tell("bundle.write", { dayId: day.id, previewSha256: sha256 })) as {
    readonly bytes: string;
  };
  // The first four bytes of every zip file.
  hold(Buffer.from(file.bytes, "base64").readUInt32BE(0) === 0x504b0304);
}

async function askedNothingOutside(): Promise<void> {
  hold(blockedRequests().count === 0);
}

/** Checks the log for the demo's invented people, who are in the store by now. */
async function logHasNoName({ desk, log }: Checked): Promise<void> {
  const { people } = (await desk.ask("people.list")) as {
    readonly people: readonly { readonly name: string }[];
  };
  const text = log
    .files()
    .map((file) => file.text)
    .join("");
  hold(text.includes("started") && people.length > 0);
  hold(people.every(({ name }) => !text.includes(name)));
}

/** Returns the second window; there are only two while nothing is printed. */
function besideDesk(windows: Windows): WebContents {
  const window = BrowserWindow.getAllWindows().find((each) => each !== windows.desk());
  if (window === undefined) throw new Error("No other window opened.");
  return window.webContents;
}

function hold(holds: boolean): void {
  if (!holds) throw new Error("it is not as it should be");
}
