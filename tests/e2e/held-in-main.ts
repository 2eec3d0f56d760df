/** Both clocks of a machine that stand still, in whole ms: since 1970, and since the machine started. */
export interface HeldAt {
  readonly wall: number;
  readonly monotonic: number;
}

/** What a held program lets the runner do with its clocks. */
interface MainClock {
  /** So many ms later, in the main process and in all pages at once. */
  pass(ms: number): Promise<void>;
}

declare global {
  var heldMain: MainClock | undefined;
}

/** What `holdInMain` is told. */
export interface Holding {
  /** Null: as late as it is now. */
  readonly at: HeldAt | null;
  /** The text of `holdInPage`. */
  readonly inPage: string;
  /** A file of the test's own that pages begin with. */
  readonly beginning: string;
}

/**
 * Stops the clocks that the program reads, in its main process and in every page that it shows or will show, after a
 * crash too. The main process runs the text of this function: it sees nothing around it.
 */
export async function holdInMain(
  { app, session, webContents }: Pick<typeof import("electron"), "app" | "session" | "webContents">,
  { at, inPage, beginning }: Holding,
): Promise<HeldAt> {
  const files = process.getBuiltinModule("node:fs");
  const now = () => ({ wall: Date.now(), monotonic: Math.round(Number(process.hrtime.bigint()) / 1e6) });
  let { wall, monotonic } = at ?? now();
  const own = performance.now() - monotonic;

  process.hrtime.bigint = () => BigInt(monotonic) * 1_000_000n;
  performance.now = () => own + monotonic;
  globalThis.Date = new Proxy(Date, {
    construct: (target, args, made) => Reflect.construct(target, args.length === 0 ? [wall] : args, made),
    get: (target, name) => (name === "now" ? () => wall : Reflect.get(target, name)),
  });
  // A page that goes meanwhile (a window that a test had for itself) never answers.
  const tellPage = (page: Electron.WebContents, script: string) =>
    new Promise<void>((resolve, reject) => {
      page.once("destroyed", resolve);
      page.executeJavaScript(script).then(() => resolve(), reject);
    });
  const inEveryPage = (script: string) =>
    Promise.all(webContents.getAllWebContents().map((page) => tellPage(page, script)));
  globalThis.heldMain = {
    async pass(ms) {
      await inEveryPage("heldPage.quiet()");
      wall += ms;
      monotonic += ms;
      writeBeginning();
      await inEveryPage(`heldPage.pass(${ms})`);
    },
  };
  writeBeginning();
  // Sessions are there only then; of all that waits for it, this was the first to ask.
  await app.whenReady();
  for (const host of ["desk", "board"]) beginPagesOf(session.fromPartition(host));
  await inEveryPage(`(${inPage})(${wall})`);
  return { wall, monotonic };

  /** What runs in a page before anything of its own does: its clocks stand as everybody's do just then. */
  function writeBeginning(): void {
    const script = JSON.stringify(`(${inPage})(${wall})`);
    files.writeFileSync(beginning, `void require("electron").webFrame.executeJavaScript(${script});\n`);
  }

  function beginPagesOf(pages: Electron.Session): void {
    // Electron before 35 has it by another name only.
    const older = pages as unknown as { setPreloads?(files: readonly string[]): void };
    if (older.setPreloads === undefined) pages.registerPreloadScript({ type: "frame", filePath: beginning });
    else older.setPreloads([beginning]);
  }
}
