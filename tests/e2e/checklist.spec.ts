import { join } from "node:path";
import { expect, type Page } from "@playwright/test";
import { projectFolder } from "../../electron/runtime/host.ts";
import type { Bridge } from "../../electron/shell/bridge/bridge-types.ts";
import { callDoor, listenToRefusals, statusOf, withoutContentPolicy } from "./page.ts";
import { test } from "./shared.ts";

/**
 * The points of the checklist in Electron's own documentation ("Security") that isolation.spec.ts, outside.spec.ts,
 * bridge.spec.ts and package.spec.ts leave. electron/shell/SECURITY.md has the table of all of them.
 */

/** All that the desk's page may ask of the shell; what is added here needs a check of its input and a look at misuse. */
const methods = [
  "saveFile",
  "savePdf",
  "print",
  "paperProgress",
  "cancelPaper",
  "openSheet",
  "openBoard",
  "closeBoard",
  "boardOpen",
  "displays",
  "chooseBackupFolder",
  "report",
] as const satisfies readonly (keyof Bridge)[];

test("the bridge is a list of plain questions, with nothing of Electron behind it", async ({ tapeline }) => {
  const found = await tapeline.desk.evaluate(() => {
    const { bridge } = window as unknown as { bridge: Record<string, unknown> };
    return Object.entries(bridge).map(([name, value]) => [name, typeof value]);
  });
  expect(found).toEqual(methods.map((name) => [name, "function"]));
  const frozen = await tapeline.desk.evaluate(() => {
    const { bridge } = window as unknown as { bridge: Record<string, unknown> };
    bridge.displays = () => "replaced";
    return String(bridge.displays) === "() => 'replaced'";
  });
  expect(frozen).toBe(false);
});

test("what has no right form is no path to a file, however it is written", async ({ tapeline }) => {
  const statuses = await tapeline.desk.evaluate(
    async (paths) => {
      const found: [string, number | string][] = [];
      for (const path of paths) {
        const answer = await fetch(path).then(
          ({ status }) => status,
          (error: Error) => error.name,
        );
        if (answer !== 404) found.push([path, answer]);
      }
      return found;
    },
    [
      "app://desk/etc/passwd",
      "app://desk//etc/passwd",
      "app://desk/%2fetc%2fpasswd",
      "app://desk/C:/Windows/win.ini",
      "app://desk/C:%5cWindows%5cwin.ini",
      "app://desk/file:///etc/passwd",
      "app://desk/%252e%252e/main/main.js",
      "app://desk/%252e%252e%252fmain%252fmain.js",
      "app://desk/%c0%ae%c0%ae/main/main.js",
      "app://desk/....//main/main.js",
      "app://desk/.%00./main/main.js",
      "app://desk/assets/../../main/main.js",
      "app://desk/assets/..;/..;/main/main.js",
      "app://desk/index.html/../../main/main.js",
      "app://desk/index.html/",
      "app://desk/index.html.",
      "app://desk/index.html%20",
      "app://desk/index.html::$DATA",
      "app://desk/\\\\server\\share\\file",
      "app://desk/~/.ssh/id_rsa",
      "app://desk/__proto__",
      "app://desk/constructor",
      "app://desk/preload/preload.cjs",
    ],
  );
  expect(statuses).toEqual([]);
  expect(await statusOf(tapeline.desk, "app://desk/index.html")).toBe(200);
});

test("no window has a preference that weakens it, the one that is laid out on paper too", {
  tag: "@last",
}, async ({ tapeline }) => {
  await callDoor(tapeline.desk, "day.create", { sure: true, date: "2031-05-04", title: "A day" });
  await tapeline.openBoard();
  const seen = tapeline.app.evaluate(
    ({ app, BrowserWindow }) =>
      new Promise<Record<string, unknown>[]>((resolve) => {
        app.once("browser-window-created", () => {
          const all = BrowserWindow.getAllWindows().map(({ webContents }) =>
            Reflect.get(webContents, "getLastWebPreferences").call(webContents),
          );
          resolve(all);
        });
      }),
  );
  const file = join(tapeline.folder, "page.pdf");
  await tapeline.app.evaluate(({ dialog }, filePath) => {
    Object.assign(dialog, { showSaveDialog: async () => ({ canceled: false, filePath }) });
  }, file);
  const paper = { path: "/print/instructions/core", paper: "a4", suggestedName: "page.pdf" } as const;
  const saved = await tapeline.desk.evaluate(
    (page) => (window as unknown as { bridge: Bridge }).bridge.savePdf(page),
    paper,
  );
  expect(saved).toEqual({ saved: true, name: "page.pdf" });
  const preferences = await seen;
  expect(preferences).toHaveLength(3);
  for (const preference of preferences) {
    expect(preference).toMatchObject({ sandbox: true, contextIsolation: true, webSecurity: true });
    for (const weak of [
      "nodeIntegration",
      "nodeIntegrationInWorker",
      "nodeIntegrationInSubFrames",
      "allowRunningInsecureContent",
      "experimentalFeatures",
      "enableBlinkFeatures",
      "webviewTag",
      "navigateOnDragDrop",
    ]) {
      expect.soft(preference[weak] || false, weak).toBe(false);
    }
  }
});

test("a webview stays an empty element", { tag: "@last" }, async ({ tapeline }) => {
  await withoutContentPolicy(tapeline.app, tapeline.desk);
  const made = await tapeline.desk.evaluate(() => {
    const view = Object.assign(document.createElement("webview"), { src: "app://desk/" });
    view.setAttribute("allowpopups", "");
    document.body.append(view);
    return [view.constructor.name, "loadURL" in view];
  });
  expect(made).toEqual(["HTMLElement", false]);
  const kinds = await tapeline.app.evaluate(({ webContents }) =>
    webContents.getAllWebContents().map((contents) => contents.getType()),
  );
  expect(kinds).not.toContain("webview");
});

test("no page reads a file of the machine, and no window that anybody makes shows one", {
  tag: "@last",
}, async ({ tapeline }) => {
  const file = `file://${join(projectFolder, "package.json").replaceAll("\\", "/")}`;
  await withoutContentPolicy(tapeline.app, tapeline.desk);
  expect(await statusOf(tapeline.desk, file)).toBe("TypeError");
  const loaded = await tapeline.app.evaluate(
    async ({ BrowserWindow }, addresses) => {
      const outcomes: string[] = [];
      for (const address of addresses) {
        // A window as careless as can be: no session, no preference of ours.
        const window = new BrowserWindow({ show: false });
        outcomes.push(
          await window.loadURL(address).then(
            () => "loaded",
            (error: Error) => error.message,
          ),
        );
        window.destroy();
      }
      return outcomes;
    },
    [file, "http://127.0.0.1:9/", "data:text/html,away"],
  );
  expect(loaded).toHaveLength(3);
  for (const outcome of loaded)
    expect(outcome).toMatch(/ERR_BLOCKED_BY_CLIENT|ERR_FAILED|ERR_UNKNOWN_URL_SCHEME/);
});

test("a window that somebody makes gets no data, no permission, no bridge and no windows of its own", {
  tag: "@last",
}, async ({ tapeline }) => {
  const stranger = tapeline.app.waitForEvent("window");
  // Nothing but an empty page loads at all in a session that is not ours.
  await tapeline.app.evaluate(({ BrowserWindow }) => new BrowserWindow().loadURL("about:blank"));
  const page = await stranger;
  expect(await statusOf(page, "app://desk/trpc/day.current")).toBe("TypeError");
  expect(await page.evaluate(() => "bridge" in window)).toBe(false);
  expect(await page.evaluate(() => window.open("app://desk/") === null)).toBe(true);
  const { refused } = await listenToRefusals(tapeline.app, page);
  await page.evaluate(() => {
    location.href = "app://desk/";
  });
  await refused("app://desk/");
  expect(page.url()).toBe("about:blank");
  expect(await page.evaluate(() => Notification.requestPermission())).toBe("denied");
});

test("every method of the bridge asks who sends it", { tag: "@last" }, async ({ tapeline }) => {
  const other = tapeline.app.waitForEvent("window");
  await tapeline.app.evaluate(
    async ({ BrowserWindow, session }, preload) => {
      const board = session.fromPartition("board");
      await new BrowserWindow({ show: false, webPreferences: { session: board, preload } }).loadURL(
        "app://board/",
      );
    },
    join(projectFolder, "out", "preload", "preload.cjs"),
  );
  const answers = await askAll(await other);
  expect(Object.keys(answers)).toEqual([...methods]);
  for (const [name, answer] of Object.entries(answers)) {
    expect.soft(answer, name).toContain("Only the desk's page may ask this.");
  }
});

/** Calls every method with nothing, and tells how each went. */
function askAll(page: Page): Promise<Record<string, string>> {
  return page.evaluate(async () => {
    const { bridge } = window as unknown as { bridge: Record<string, (input?: unknown) => Promise<unknown>> };
    const answers: Record<string, string> = {};
    for (const [name, ask] of Object.entries(bridge)) {
      answers[name] = await ask().then(
        () => "answered",
        (error: Error) => error.message,
      );
    }
    return answers;
  });
}
