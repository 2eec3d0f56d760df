import { globSync, readFileSync } from "node:fs";
import { dirname, join, relative } from "node:path";
import { expect, test } from "vitest";

const root = new URL("../../../", import.meta.url).pathname;

/** Every file that these files lead to by their imports, types among them. */
function reachedFrom(files: readonly string[]): Set<string> {
  const reached = new Set<string>();
  const open = [...files];
  for (let file = open.pop(); file !== undefined; file = open.pop()) {
    if (reached.has(file)) continue;
    reached.add(file);
    const imports = readFileSync(join(root, file), "utf8").matchAll(/from "(?<path>\.[^"]+\.tsx?)"/g);
    for (const { groups } of imports)
      open.push(relative(root, join(root, dirname(file), groups?.path ?? "")));
  }
  return reached;
}

/** What tells places: on no account may the board come near it. */
function tellsPlaces(file: string): boolean {
  return file.startsWith("electron/api/place/") || file === "renderer/parts/marks/PlaceBand.tsx";
}

test("nothing that the board is told or shows leads to a place among others", () => {
  const board = [...globSync("electron/api/board/*.ts", { cwd: root })];
  const scenes = [...globSync("renderer/screens/board/*.{ts,tsx}", { cwd: root })];
  expect([...reachedFrom(board)].filter(tellsPlaces)).toEqual([]);
  // Windows know the door's types as a whole; what they show is their own parts.
  const parts = [...reachedFrom(scenes)].filter((file) => file.startsWith("renderer/"));
  expect(parts.length).toBeGreaterThan(20);
  expect(parts.filter(tellsPlaces)).toEqual([]);
});

test("the athlete's page does lead there, so the search finds what it should", () => {
  const page = reachedFrom(["renderer/screens/athletes/AthletePageScreen.tsx"]);
  expect([...page].filter(tellsPlaces).length).toBeGreaterThan(0);
});
