import { expect } from "@playwright/test";
import { callDoor, inlineScriptRuns, statusOf, withoutContentPolicy } from "./page.ts";
import { test } from "./shared.ts";

/** The points of the checklist in Electron's own documentation ("Security") that concern what a page is and loads. */

test("pages run in the sandbox, in a context of their own, without Node", async ({ tapeline }) => {
  const board = await tapeline.openBoard();
  const preferences = await tapeline.app.evaluate(({ BrowserWindow }) =>
    // Electron's types leave the method out.
    BrowserWindow.getAllWindows().map((window) =>
      Reflect.get(window.webContents, "getLastWebPreferences").call(window.webContents),
    ),
  );
  expect(preferences).toHaveLength(2);
  for (const preference of preferences) {
    expect(preference).toMatchObject({
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      webSecurity: true,
    });
  }
  const names = ["require", "process", "module", "Buffer", "global"];
  for (const page of [tapeline.desk, board]) {
    const seen = await page.evaluate((all) => all.filter((name) => name in window), names);
    expect(seen).toEqual([]);
    expect(await page.evaluate(() => isSecureContext)).toBe(true);
  }
});

test("the content policy stops scripts and styles that are written into a page", async ({ tapeline }) => {
  const policy = await tapeline.desk.evaluate(() =>
    fetch("/").then((response) => response.headers.get("content-security-policy")),
  );
  expect(policy).toContain("default-src 'none'; script-src 'self'; style-src 'self'");
  expect(policy).not.toContain("unsafe");
  expect(await inlineScriptRuns(tapeline.desk)).toBe(false);
  const evaluated = await tapeline.desk.evaluate(() => {
    const probe = document.body.appendChild(document.createElement("p"));
    probe.setAttribute("style", "color: rgb(1, 2, 3)");
    return getComputedStyle(probe).color === "rgb(1, 2, 3)";
  });
  expect(evaluated).toBe(false);
});

test("no text becomes markup or script, whoever writes it into a page", async ({ tapeline }) => {
  const board = await tapeline.openBoard();
  for (const page of [tapeline.desk, board]) {
    const refused = await page.evaluate(() => {
      const place = document.body.appendChild(document.createElement("p"));
      const image = "<img src=x onerror=\"this.id = 'ran'\">";
      const ways: Record<string, () => unknown> = {
        innerHTML: () => (place.innerHTML = image),
        outerHTML: () => (place.outerHTML = image),
        insert: () => place.insertAdjacentHTML("beforeend", image),
        range: () => document.createRange().createContextualFragment(image),
        parser: () => new DOMParser().parseFromString(image, "text/html"),
        frame: () => (document.createElement("iframe").srcdoc = image),
        write: () => document.write(image),
        handler: () => place.setAttribute("onclick", "this.id = 'ran'"),
        text: () => (document.createElement("script").text = "1"),
        address: () => (document.createElement("script").src = "https://a.example/a.js"),
        thread: () => new Worker("data:text/javascript,1"),
        timer: () => setTimeout("1" as never),
        policy: () => window.trustedTypes?.createPolicy("other", {} as never),
        again: () => window.trustedTypes?.createPolicy("default", {} as never),
      };
      return Object.entries(ways).filter(([, write]) => {
        try {
          write();
          return true;
        } catch (error) {
          return !(error instanceof TypeError);
        }
      });
    });
    expect(refused.map(([way]) => way)).toEqual([]);
    // The empty text alone: a library of ours empties with it what it read out.
    expect(await page.evaluate(() => (document.createElement("p").innerHTML = ""))).toBe("");
  }
});

test("no place of the desk, and not the board, does anything that its own policy refuses", async ({
  tapeline,
}) => {
  test.setTimeout(120_000);
  const refused: string[] = [];
  const board = await tapeline.openBoard();
  await callDoor(tapeline.desk, "day.openDemo");
  for (const page of [tapeline.desk, board]) {
    page.on("console", (message) => {
      if (/Content Security Policy|Refused to|Trusted/.test(message.text())) refused.push(message.text());
    });
    page.on("pageerror", (error) => refused.push(error.message));
    await page.reload();
    await page.waitForFunction(() => document.documentElement.dataset.ready === "true");
  }
  const tests = ["push-up", "agility", "vertical", "core", "endurance"].map((code) => `/station/${code}`);
  const alone = [
    "sheets",
    "check-in",
    "rehearsal",
    "plan",
    "lock",
    "noise",
    "study",
    "report",
    "bundle",
    "reference",
    "day",
  ];
  const about = ["athletes", "athletes/1", "summary", "cards", "instructions"].map((place) => `/${place}`);
  for (const path of [...tests, ...alone.map((place) => `/${place}`), ...about]) {
    await tapeline.desk.evaluate((hash) => {
      location.hash = hash;
    }, path);
    await tapeline.desk.locator("main h1").filter({ visible: true }).first().waitFor();
    await tapeline.desk.waitForFunction(() => document.querySelector('[aria-busy="true"]') === null);
  }
  expect(refused).toEqual([]);
});

test("paths lead to the build's files and nowhere else", async ({ tapeline }) => {
  expect(await statusOf(tapeline.desk, "/index.html")).toBe(200);
  for (const path of [
    "/package.json",
    "/../main/main.js",
    "/%2e%2e/main/main.js",
    "/..%2fmain%2fmain.js",
    "/assets/..%2f..%2fmain%2fmain.js",
    "/..%5cmain%5cmain.js",
    "/..\\main\\main.js",
    "//etc/passwd",
    "/%00",
    "/index.html%00",
    "/%zz",
  ]) {
    expect.soft(await statusOf(tapeline.desk, `app://desk${path}`), path).toBe(404);
  }
});

test("the checks above can fail: without the policy an inline script runs", { tag: "@last" }, async ({
  tapeline,
}) => {
  await withoutContentPolicy(tapeline.app, tapeline.desk);
  expect(await inlineScriptRuns(tapeline.desk)).toBe(true);
});

test("a host can't be reached from another, with or without the content policy", { tag: "@last" }, async ({
  tapeline,
}) => {
  const board = await tapeline.openBoard();
  const body = { method: "POST", body: "{}", headers: { "content-type": "application/json" } };
  for (const [page, own, other] of [
    [tapeline.desk, "desk", "board"],
    [board, "board", "desk"],
  ] as const) {
    const query = `app://${other}/trpc/day.current`;
    expect(await statusOf(page, query)).toBe("TypeError");
    await withoutContentPolicy(tapeline.app, page);
    // The door itself answers the page on its own host, so what follows is not for want of one.
    expect(await statusOf(page, `app://${own}/trpc/day.current`)).toBe(200);
    expect(await statusOf(page, query)).toBe(404);
    expect(await statusOf(page, `app://${other}/trpc/day.create`, body)).toBe(404);
    expect(await statusOf(page, `app://${other}/`)).toBe(404);
    expect(await statusOf(page, "app://elsewhere/")).toBe(404);
  }
});

test("the board may read but not write, and has no bridge", { tag: "@last" }, async ({ tapeline }) => {
  const board = await tapeline.openBoard();
  expect(await board.evaluate(() => "bridge" in window)).toBe(false);
  expect(await tapeline.desk.evaluate(() => "bridge" in window)).toBe(true);
  const day = JSON.stringify({ date: "2031-05-04", title: "A day from the board", sure: true });
  const headers = { "content-type": "application/json" };
  expect(await statusOf(board, "/trpc/day.current")).toBe(200);
  expect(await statusOf(board, "/trpc/day.create", { method: "POST", body: day, headers })).toBe(403);
  expect(await statusOf(tapeline.desk, "/trpc/day.create", { method: "POST", body: day, headers })).toBe(200);
});
