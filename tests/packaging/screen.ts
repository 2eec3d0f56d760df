import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { run } from "../../electron/runtime/host.ts";
import { colourCount, type Picture, pngOf, readScreen } from "./picture.ts";
import { inRoot, type Root, startInRoot } from "./root.ts";

/** A screen that nobody sees, in a root of its own, so that its libraries stand in for none that the program needs. */
export interface Screen {
  /** What the program is told: the value of DISPLAY. */
  readonly name: string;
  /** The picture once it shows something and has stopped moving. */
  settled(): Promise<Picture>;
  /** Goes on by `stops` stops of the keyboard from the top of the page, types the text there and presses Enter. */
  enter(stops: number, text: string): Promise<void>;
  /** What the window's class is to the desktop (WM_CLASS): two names. */
  windowClass(): Promise<readonly string[]>;
}

const packages = ["xvfb", "xdotool", "x11-utils"];
/** A press on the page's empty corner: where no desktop gives the window the keyboard, that does. */
const atTop = ["mousemove", "5", "5", "click", "1", "sleep", "1"];
/** A page of text has far more, from the smoothed edges of its letters. */
const fewestColours = 50;

/** Makes the screen in `root`, and lets the program in `program` reach it. */
export async function makeScreen(root: Root, program: Root): Promise<Screen> {
  await inRoot(root, ["apt-get", "install", "-y", "--no-install-recommends", ...packages]);
  const sockets = [root, program].map(({ folder }) => join(folder, "tmp/.X11-unix")) as [string, string];
  for (const each of sockets) mkdirSync(each);
  await run("chmod", ["1777", ...sockets]);
  await run("mount", ["--bind", ...sockets]);
  const name = await startServer(root);
  const inside = (...command: string[]) => inRoot(root, ["env", `DISPLAY=${name}`, ...command]);
  return {
    name,
    settled: () => settled(() => readScreen(readFileSync(join(root.folder, "tmp/Xvfb_screen0")))),
    enter: async (stops, text) => {
      const tabs = Array.from({ length: stops }, () => "Tab");
      await inside("xdotool", ...atTop, "key", "--delay", "200", ...tabs);
      await inside("xdotool", "type", "--delay", "80", text);
      await inside("xdotool", "key", "Return");
    },
    windowClass: async () => {
      const id = (await inside("xdotool", "search", "--onlyvisible", "--name", "Tapeline")).trim();
      const printed = await inside("xprop", "-id", id, "WM_CLASS");
      return [...printed.matchAll(/"([^"]*)"/g)].map(([, each = ""]) => each);
    },
  };
}

/** Starts the server on a number that is free on the machine too, whose sockets are in reach, and tells its name. */
async function startServer(root: Root): Promise<string> {
  const how = ["-screen", "0", "1280x800x24", "-nolisten", "tcp", "-noreset", "-fbdir", "/tmp"];
  const server = startInRoot(root, ["Xvfb", "-displayfd", "1", ...how]);
  await untilTrue("the screen is there", () => {
    if (server.child.exitCode !== null) throw new Error(server.printed());
    return existsSync(join(root.folder, "tmp/Xvfb_screen0")) && /^\d+$/m.test(server.printed());
  });
  return `:${/^\d+$/m.exec(server.printed())?.[0]}`;
}

async function settled(look: () => Picture): Promise<Picture> {
  let [before, now] = [look(), look()];
  await untilTrue("the window shows something that stands still", async () => {
    await pause(1_000);
    [before, now] = [now, look()];
    return now.colours.equals(before.colours) && colourCount(now) >= fewestColours;
  });
  return now;
}

/** Waits until `look` finds it so. Rejects, naming it, when that takes more than a minute. */
export async function untilTrue(what: string, look: () => Promise<boolean> | boolean): Promise<void> {
  const end = performance.now() + 60_000;
  while (!(await look())) {
    if (performance.now() > end) throw new Error(`This did not come true: ${what}.`);
    await pause(250);
  }
}

/** Keeps the picture as a PNG where somebody wants to look at it. */
export function keepPicture(folder: string | undefined, title: string, picture: Picture): void {
  if (folder === undefined) return;
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, `${title}.png`), pngOf(picture));
}
