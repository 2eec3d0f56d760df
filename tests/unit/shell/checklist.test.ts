import { existsSync, globSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";

/** The table of Electron's checklist in electron/shell/SECURITY.md, held to the code that it quotes. */
const root = new URL("../../../", import.meta.url).pathname;
const text = readFileSync(`${root}electron/shell/SECURITY.md`, "utf8");
const rows = text
  .split("\n")
  .filter((line) => /^\| (?:\d|N)/.test(line))
  .map((line) => line.split(" | ").map((cell) => cell.replace(/^\| | \|$/g, "")));

/** A file by its path from the root, or by its name alone somewhere in a folder. */
function textOf(file: string, folder: string): string {
  if (existsSync(root + file)) return readFileSync(root + file, "utf8");
  const [found, ...others] = globSync(`${folder}**/${file}`, { cwd: root });
  if (found === undefined || others.length > 0)
    throw new Error(`${others.length + 1} files are called ${file}.`);
  return readFileSync(root + found, "utf8");
}

/** A cell that names a file and what stands in it, both in backquotes. */
function quoted(cell: string): { file: string; quote: string } | undefined {
  const [, file, quote] = /^`([^`]+)`: `([^`]+)`/.exec(cell) ?? [];
  return file === undefined || quote === undefined ? undefined : { file, quote };
}

test("the table has every point of the checklist, 1 to 20", () => {
  const points = rows.flatMap(([point = ""]) => [...(/^[\d, ]+/.exec(point)?.[0] ?? "").matchAll(/\d+/g)]);
  expect([...new Set(points.map(Number))]).toEqual(Array.from({ length: 20 }, (_each, index) => index + 1));
});

test("every line that it quotes stands in its file", () => {
  for (const [point, code = ""] of rows) {
    const found = quoted(code);
    if (found === undefined) expect(point).toContain("openExternal");
    else expect(textOf(found.file, "electron/shell/"), point).toContain(found.quote);
  }
});

test("every test that it names is there", () => {
  for (const [point, , tried = ""] of rows) {
    const found = quoted(tried);
    if (found === undefined) throw new Error(`No test is named for ${point}.`);
    expect(textOf(found.file, "tests/e2e/"), point).toContain(`test("${found.quote}`);
  }
});

test("nothing in the sources opens what the checklist closes", () => {
  const closed =
    /openExternal|openPath|ipcMain\.on\(|ipcRenderer\.send|sendSync|webviewTag|enableBlinkFeatures|experimentalFeatures|allowRunningInsecureContent|bypassCSP|(?:nodeIntegration\w*|navigateOnDragDrop): true|(?:sandbox|contextIsolation|webSecurity): false|dangerouslySetInnerHTML|\.innerHTML =|insertAdjacentHTML|\beval\(|new Function\(|crashReporter|unsafe-(?:inline|eval)/;
  const files = globSync("{electron,renderer}/**/*.{ts,tsx,html}", { cwd: root });
  expect(files.length).toBeGreaterThan(300);
  const found = files.flatMap((file) => {
    const match = closed.exec(readFileSync(root + file, "utf8"));
    return match === null ? [] : [`${file}: ${match[0]}`];
  });
  expect(found).toEqual([]);
});
