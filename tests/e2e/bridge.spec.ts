import { mkdir, readdir, readFile, truncate, writeFile } from "node:fs/promises";
import { join } from "node:path";
import type { ElectronApplication } from "@playwright/test";
import { expect } from "@playwright/test";
import { projectFolder } from "../../electron/runtime/host.ts";
import type { Bridge } from "../../electron/shell/bridge/bridge-types.ts";
import { test } from "./shared.ts";

test("a file is saved where the person says, with the name that was suggested", async ({ tapeline }) => {
  const file = join(tapeline.folder, "saved.csv");
  await answerSave(tapeline.app, file);
  const outcome = await tapeline.bridge((bridge) =>
    bridge.saveFile({
      suggestedName: "Kept back 2031-05-04.csv",
      bytes: new Uint8Array([108, 195, 188, 0, 255]),
    }),
  );
  expect(outcome).toEqual({ saved: true, name: "saved.csv" });
  expect([...(await readFile(file))]).toEqual([108, 195, 188, 0, 255]);
  expect(await tapeline.app.evaluate(() => Reflect.get(globalThis, "askedFor"))).toBe(
    "Kept back 2031-05-04.csv",
  );
  expect((await readdir(tapeline.folder)).filter((name) => name.endsWith(".part"))).toEqual([]);
});

test("a cancelled and a failed save are told apart", async ({ tapeline }) => {
  const save = () =>
    tapeline.bridge((bridge) => bridge.saveFile({ suggestedName: "x.zip", bytes: new Uint8Array(3) }));
  await answerSave(tapeline.app, "");
  expect(await save()).toEqual({ saved: false, why: "cancelled" });
  await answerSave(tapeline.app, join(tapeline.folder, "gone", "x.zip"));
  expect(await save()).toEqual({ saved: false, why: "failed" });
});

test("a sheet is read; one of 200 MB and a folder are refused", async ({ tapeline }) => {
  const [sheet, huge] = [join(tapeline.folder, "roster.csv"), join(tapeline.folder, "huge.csv")];
  await writeFile(sheet, "league,name\nÅ,B\n");
  await writeFile(huge, "");
  await truncate(huge, 200 * 1024 * 1024);
  await mkdir(join(tapeline.folder, "folder.csv"));
  const open = () =>
    tapeline.bridge(async (bridge) => {
      const opened = await bridge.openSheet();
      return opened !== null && "bytes" in opened
        ? [opened.name, new TextDecoder().decode(opened.bytes)]
        : opened;
    });
  await answerOpen(tapeline.app, sheet);
  expect(await open()).toEqual(["roster.csv", "league,name\nÅ,B\n"]);
  await answerOpen(tapeline.app, huge);
  expect(await open()).toEqual({ name: "huge.csv", refused: "too-big" });
  await answerOpen(tapeline.app, join(tapeline.folder, "folder.csv"));
  expect(await open()).toEqual({ name: "folder.csv", refused: "unreadable" });
  await answerOpen(tapeline.app, undefined);
  expect(await open()).toBeNull();
});

test("what is not as agreed is refused before anything is asked", async ({ tapeline }) => {
  await answerSave(tapeline.app, join(tapeline.folder, "never.csv"));
  for (const suggestedName of [
    "../up.csv",
    "a/b.csv",
    "a\\b.csv",
    "C:x.csv",
    ".hidden",
    "nul\0.csv",
    "",
    "x".repeat(121),
  ]) {
    const outcome = await tapeline.desk.evaluate(
      (name) =>
        (window as unknown as { bridge: Bridge }).bridge
          .saveFile({ suggestedName: name, bytes: new Uint8Array(1) })
          .then(
            () => "done",
            () => "refused",
          ),
      suggestedName,
    );
    expect.soft(outcome, JSON.stringify(suggestedName)).toBe("refused");
  }
  expect(await readdir(tapeline.folder)).not.toContain("never.csv");
  expect(await tapeline.app.evaluate(() => Reflect.get(globalThis, "askedFor"))).toBeUndefined();
});

test("only the desk's page is answered, even where another page has the bridge", { tag: "@last" }, async ({
  tapeline,
}) => {
  const other = tapeline.app.waitForEvent("window");
  // The desk's own preload script in a window of the board: what the shell never does.
  await tapeline.app.evaluate(
    async ({ BrowserWindow, session }, preload) => {
      const board = session.fromPartition("board");
      await new BrowserWindow({ webPreferences: { session: board, preload } }).loadURL("app://board/");
    },
    join(projectFolder, "out", "preload", "preload.cjs"),
  );
  const answers = await (await other).evaluate(() => {
    const { bridge } = window as unknown as { bridge: Bridge };
    const told = (work: Promise<unknown>) =>
      work.then(
        () => "done",
        (error: Error) => error.message,
      );
    return Promise.all([told(bridge.boardOpen()), told(bridge.openSheet())]);
  });
  for (const answer of answers) expect(answer).toContain("Only the desk's page may ask this.");
});

/** Answers the next questions where to save: with a path, or "" for a person who cancels. */
async function answerSave(app: ElectronApplication, filePath: string): Promise<void> {
  await app.evaluate(({ dialog }, path) => {
    Reflect.deleteProperty(globalThis, "askedFor");
    Object.assign(dialog, {
      showSaveDialog: async (_window: unknown, options: { defaultPath?: string }) => {
        Object.assign(globalThis, { askedFor: options.defaultPath });
        return { canceled: path === "", filePath: path };
      },
    });
  }, filePath);
}

/** Answers the next questions which file to open: with a path, or undefined for a person who cancels. */
async function answerOpen(app: ElectronApplication, file: string | undefined): Promise<void> {
  await app.evaluate(({ dialog }, path) => {
    Object.assign(dialog, {
      showOpenDialog: async () => ({
        canceled: path === undefined,
        filePaths: path === undefined ? [] : [path],
      }),
    });
  }, file);
}
