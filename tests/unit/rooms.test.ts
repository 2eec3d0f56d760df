import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative } from "node:path";
import { expect, test } from "vitest";
import { testCodes } from "../../electron/domain/tests/registry.ts";

/** The arrows between rooms, as DEVELOPERS.md draws them: what a file of a room may import. */
const root = new URL("../..", import.meta.url).pathname;

interface Import {
  readonly file: string;
  /** A package's name, or the imported file's path from the root. */
  readonly from: string;
  readonly typeOnly: boolean;
}

function importsOf(room: string): Import[] {
  const files = readdirSync(join(root, room), { recursive: true, encoding: "utf8" });
  return files.filter((file) => /\.tsx?$/.test(file)).flatMap((file) => importsIn(join(room, file)));
}

function importsIn(file: string): Import[] {
  const text = readFileSync(join(root, file), "utf8");
  const found = text.matchAll(/^(?:(?:import|export)\s(?<what>[^;"]*?)\sfrom|import)\s"(?<from>[^"]+)"/gm);
  return [...found].map(({ groups = {} }) => {
    const { what = "", from = "" } = groups;
    const path = from.startsWith(".") ? relative(root, join(root, dirname(file), from)) : from;
    return { file, from: path, typeOnly: what.startsWith("type ") };
  });
}

/** Every import of the room that `allowed` does not let pass, as "file → what". */
function strayIn(room: string, allowed: (each: Import) => boolean): string[] {
  return importsOf(room)
    .filter((each) => !allowed(each))
    .map(({ file, from }) => `${file} → ${from}`);
}

function isIn(path: string, ...rooms: string[]): boolean {
  return rooms.some((room) => path.startsWith(`${room}/`));
}

test("the imports are found at all", () => {
  expect(importsOf("electron/domain").length).toBeGreaterThan(50);
  expect(importsOf("renderer").some(({ typeOnly }) => typeOnly)).toBe(true);
});

test("the domain knows zod, two libraries of statistics and itself", () => {
  const libraries = ["zod", "simple-statistics", "jstat"];
  const stray = strayIn(
    "electron/domain",
    ({ from }) => libraries.includes(from) || isIn(from, "electron/domain"),
  );
  expect(stray).toEqual([]);
});

test("the store knows the domain, Node, and SQLite in one file", () => {
  const stray = strayIn("electron/store", ({ file, from }) => {
    if (from === "better-sqlite3") return file === "electron/store/connect.ts";
    return from.startsWith("node:") || isIn(from, "electron/store", "electron/domain");
  });
  expect(stray).toEqual([]);
});

test("the door knows the store, the domain and the words, and no window", () => {
  const rooms = ["electron/api", "electron/store", "electron/domain", "resources/locales"];
  const stray = strayIn("electron/api", ({ from }) =>
    from.includes("/") && !from.startsWith("@") && !from.startsWith("node:")
      ? isIn(from, ...rooms)
      : !/^(electron|better-sqlite3)$/.test(from),
  );
  expect(stray).toEqual([]);
});

test("only the shell and its composition root know Electron", () => {
  const stray = strayIn(
    "electron",
    ({ file, from }) => from !== "electron" || isIn(file, "electron/shell") || file === "electron/main.ts",
  );
  expect(stray).toEqual([]);
});

test("only the store knows SQLite's library", () => {
  expect(
    strayIn("electron", ({ file, from }) => from !== "better-sqlite3" || isIn(file, "electron/store")),
  ).toEqual([]);
});

test("merging bundles knows their reader and the domain, and nothing else knows DuckDB", () => {
  const stray = strayIn("electron/reference", ({ from }) => {
    if (from === "@duckdb/node-api" || from.startsWith("node:")) return true;
    return isIn(
      from,
      "electron/reference",
      "electron/domain",
      "electron/api/reference",
      "electron/api/sheets",
    );
  });
  expect(stray).toEqual([]);
  const isDuckDb = (from: string) => from.startsWith("@duckdb");
  expect(
    strayIn("electron", ({ file, from }) => !isDuckDb(from) || file === "electron/reference/engine.ts"),
  ).toEqual([]);
});

test("windows know values of the domain, and of the door and the shell types alone", () => {
  const stray = strayIn("renderer", ({ from, typeOnly }) => {
    if (from.startsWith("node:") || from === "electron") return false;
    return !isIn(from, "electron") || isIn(from, "electron/domain") || typeOnly;
  });
  expect(stray).toEqual([]);
});

/** The code of the test in whose folder a path lies. */
function codeIn(path: string): string | undefined {
  const folder = /^(?:electron\/domain|renderer)\/tests\/([^/]+)\//.exec(path)?.[1];
  return testCodes.find((code) => code === folder);
}

test("a test's folder knows no registry and no other test", () => {
  // A window judges what is typed as the door will; in the domain nothing of a test may ask about all of them.
  const asking = {
    "electron/domain/tests": /tests\/(?:registry|written|judge|sheet-columns)\.ts$/,
    "renderer/tests": /tests\/registry\.ts$/,
  };
  const crossing = Object.entries(asking).flatMap(([room, ofAll]) =>
    strayIn(room, ({ file, from }) => {
      const [own, other] = [codeIn(file), codeIn(from)];
      return own === undefined || (!ofAll.test(from) && (other === undefined || other === own));
    }),
  );
  expect(crossing).toEqual([]);
});

/** The renderer's rooms from the top down: each imports those below it alone. */
const floors = ["windows", "screens", "tests", "parts", "sound", "words", "app"];

function floorOf(path: string): number {
  return floors.indexOf(path.split("/")[1] ?? "");
}

test("the renderer's rooms know those below them", () => {
  expect(importsOf("renderer/windows").length).toBeGreaterThan(10);
  const stray = strayIn("renderer", ({ file, from }) => {
    return !isIn(from, "renderer") || floorOf(from) === -1 || floorOf(file) <= floorOf(from);
  });
  expect(stray).toEqual([]);
});
