import { spawnSync } from "node:child_process";
import {
  copyFileSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { expect, test } from "vitest";

/**
 * The arrows between rooms, as DEVELOPERS.md draws them. The linter holds them while one writes, by electron/biome.json and
 * renderer/biome.json; here it is asked about files that are not there, so that a rule that no longer bites is seen.
 */
const root = new URL("../..", import.meta.url).pathname;

const refused = [
  ["electron/domain/units.ts", "node:fs"],
  ["electron/domain/queue/order.ts", "../../store/tables/days.ts"],
  ["electron/domain/plan/schedule/shop.ts", "../../../store/tables/days.ts"],
  ["electron/domain/tests/core/sheet.ts", "../../../store/tables/days.ts"],
  ["electron/domain/tests/core/sheet.ts", "../registry.ts"],
  ["electron/domain/tests/core/sheet.ts", "../agility/sheet.ts"],
  ["electron/store/tables/days.ts", "better-sqlite3"],
  ["electron/store/tables/days.ts", "../../backups/keeper.ts"],
  ["electron/store/keeping/seal.ts", "../../api/door/desk.ts"],
  ["electron/backups/keeper.ts", "../api/door/desk.ts"],
  ["electron/lock/kept.ts", "../store/tables/days.ts"],
  ["electron/network/site.ts", "../api/handler.ts"],
  ["electron/network/site.ts", "../shell/scheme/headers.ts"],
  ["electron/api/day/day.ts", "electron"],
  ["electron/api/day/day.ts", "../../shell/folders.ts"],
  ["electron/api/door/trpc.ts", "../station/enter.ts"],
  ["electron/api/summary/sheets/who.ts", "../../../host/stores.ts"],
  ["electron/shell/log/report.ts", "../../store/tables/athletes.ts"],
  ["electron/host/stores.ts", "electron"],
  ["electron/reference/merge.ts", "@duckdb/node-api"],
  ["renderer/app/client.tsx", "../parts/layout/Panel.tsx"],
  ["renderer/parts/layout/Panel.tsx", "../../screens/day/DayScreen.tsx"],
  ["renderer/screens/day/DayScreen.tsx", "../home/HomeScreen.tsx"],
  ["renderer/screens/station/live/run/Running.tsx", "../../../day/DayScreen.tsx"],
  ["renderer/screens/day/DayScreen.tsx", "../../../electron/store/tables/days.ts"],
  ["renderer/screens/day/DayScreen.tsx", "node:fs"],
  ["renderer/tests/core/tool.tsx", "../agility/tool.tsx"],
  ["renderer/tests/core/tool.tsx", "../registry.ts"],
  ["renderer/tests/core/tool.tsx", "../tools.ts"],
] as const;

const allowed = [
  ["electron/network/identity.ts", "selfsigned"],
  ["electron/domain/plan/schedule/shop.ts", "../../chance.ts"],
  ["electron/domain/tests/core/sheet.ts", "../../words.ts"],
  ["electron/store/connection/connect.ts", "better-sqlite3"],
  ["electron/api/day/day.ts", "../station/view.ts"],
  ["electron/shell/log/report.ts", "../../store/connection/facts.ts"],
  ["electron/reference/engine.ts", "@duckdb/node-api"],
  ["renderer/screens/station/live/run/Running.tsx", "../../Recent.tsx"],
  ["renderer/screens/day/DayScreen.tsx", "../../../electron/domain/words.ts"],
  ["renderer/tests/core/tool.tsx", "../live/BigKey.tsx"],
] as const;

/** Lays the cases out as files in a folder with the linter's own rules; returns which of them it refuses. */
function refusedOf(cases: readonly (readonly [file: string, from: string])[]): boolean[] {
  const folder = mkdtempSync(join(tmpdir(), "tapeline-rooms-"));
  try {
    for (const name of ["biome.json", "electron/biome.json", "renderer/biome.json"]) {
      mkdirSync(join(folder, dirname(name)), { recursive: true });
      copyFileSync(join(root, name), join(folder, name));
    }
    const files = cases.map(([file, from], at) => {
      const name = join(dirname(file), `case-${at}.ts`);
      mkdirSync(join(folder, dirname(file)), { recursive: true });
      // In the place of a file with a rule of its own only that name will do.
      const path = single.includes(file) ? file : name;
      writeFileSync(join(folder, path), `import type { A } from "${from}";\nexport type B = A;\n`);
      return path;
    });
    const args = ["lint", "--vcs-enabled=false", "--only=style/noRestrictedImports", "--reporter=json"];
    const { stdout } = spawnSync("biome", args, { cwd: folder, encoding: "utf8" });
    return files.map((file) => stdout.includes(`"${file}"`));
  } finally {
    rmSync(folder, { recursive: true });
  }
}

const single = ["electron/store/connection/connect.ts", "electron/reference/engine.ts"];

test("the linter refuses what the table of the rooms forbids, and nothing that it allows", () => {
  const cases = [...refused, ...allowed];
  const told = refusedOf(cases);
  const wrong = cases.filter((_, at) => told[at] !== at < refused.length);
  expect(wrong).toEqual([]);
});

test("windows know of the door and the shell types alone", () => {
  // The linter can't tell an import of types from one of values.
  const files = readdirSync(join(root, "renderer"), { recursive: true, encoding: "utf8" });
  const lines = files
    .filter((file) => /\.tsx?$/.test(file))
    .flatMap((file) => readFileSync(join(root, "renderer", file), "utf8").match(/^import [^;]*;/gm) ?? [])
    .filter((line) => /electron\/(?:api|shell|lock|backups|store)\//.test(line));
  expect(lines.length).toBeGreaterThan(10);
  expect(lines.filter((line) => !line.startsWith("import type "))).toEqual([]);
});
