/** What the page of this folder is shown with. */
interface Settings {
  /** Gets `result.json`. */
  readonly folder: string;
  /** Has the built page. */
  readonly page: string;
  readonly task: string;
  readonly policy: string;
}

/**
 * Opens the test's window in the app's main process, which runs the text of this function: it sees nothing around it.
 * The page asks to be hidden and shown, and says at last what came of its task; then the app ends.
 */
export async function showTestPage(
  { app, BrowserWindow, session }: typeof import("electron"),
  { folder, page, task, policy }: Settings,
): Promise<void> {
  const files = process.getBuiltinModule("node:fs/promises");
  await app.whenReady();
  const own = session.fromPartition("metronome");
  const window = new BrowserWindow({
    ...{ width: 800, height: 600 },
    webPreferences: { session: own, sandbox: true, contextIsolation: true, nodeIntegration: false },
  });
  window.webContents.on("console-message", (_event, _level, message) => console.log("page:", message));
  const types: Record<string, string> = { html: "text/html", js: "text/javascript" };
  own.protocol.handle("app", async (request) => {
    const path = new URL(request.url).pathname;
    if (path === "/hide") window.hide();
    else if (path === "/show") window.showInactive();
    else if (path === "/done") {
      await files.writeFile(`${folder}/result.json`, await request.text());
      setTimeout(() => app.exit(), 100);
    } else {
      const type = types[path.split(".").at(-1) ?? ""] ?? "application/octet-stream";
      const headers = { "content-type": type, "content-security-policy": policy };
      return new Response(await files.readFile(`${page}${path}`), { headers });
    }
    return new Response("done");
  });
  await window.loadURL(`app://metronome/index.html#${task}`);
}
