import { existsSync } from "node:fs";
import { mkdir, mkdtemp, readdir, readFile, rename, rm, writeFile } from "node:fs/promises";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { listPackage } from "@electron/asar";
import { FuseState, FuseV1Options, getCurrentFuseWire } from "@electron/fuses";
import { expect } from "@playwright/test";
import { noticesText, partsOfProgram } from "../../resources/packaging/notices.ts";
import { test as base } from "./fixture.ts";
import { makePackaged, type Packaged, runPackaged } from "./packaged.ts";

/**
 * The program as it is handed on. Its fuses keep a test from attaching to it, and it refuses a debugging port, so that
 * it tries itself out (`--self-check`) and the test reads what it says.
 */
const test = base.extend<{ folder: string }, { packaged: Packaged }>({
  packaged: [
    async ({ stage }, use) => {
      void stage;
      const output = await mkdtemp(join(tmpdir(), "tapeline-package-"));
      await use(await makePackaged(output));
      await rm(output, { recursive: true, force: true, maxRetries: 5 });
    },
    { scope: "worker", timeout: 600_000 },
  ],
  // biome-ignore lint/correctness/noEmptyPattern: the runner reads the names of what is wanted from this pattern.
  folder: async ({}, use) => {
    const folder = await mkdtemp(join(tmpdir(), "tapeline-e2e-"));
    await use(folder);
    await rm(folder, { recursive: true, force: true, maxRetries: 5 });
  },
});

test("the packaged program does the main job with its own windows, store and files", async ({
  stage,
  packaged,
  folder,
}) => {
  // What it throws away lies in a place of its own: on this machine others may be trying themselves out too.
  const temporary = { TMPDIR: folder, TEMP: folder, TMP: folder };
  const { code, printed } = await runPackaged(stage, packaged, ["--self-check"], temporary);
  expect(printed).toContain("Everything works on this machine.");
  expect(printed.match(/^ok {6}/gm)).toHaveLength(9);
  expect(printed).not.toContain("FAILED");
  expect(code).toBe(0);
  expect((await readdir(folder)).filter((name) => name.startsWith("tapeline-check-"))).toEqual([]);
});

test("it starts as people start it, with a store and a log in its folder, and no memory dumps", async ({
  stage,
  packaged,
  folder,
}) => {
  const log = join(folder, "logs", "tapeline.log");
  const shown = async () => existsSync(join(folder, "tapeline.sqlite")) && existsSync(log);
  await runPackaged(stage, packaged, [], { TAPELINE_DATA: folder }, shown);
  expect(await readFile(log, "utf8")).toContain("packaged=true");
  // Chromium's memory dumps of a crash would hold names: none is asked for.
  expect(await dumpsIn(folder)).toEqual([]);
});

test("its fuses are as they must be", async ({ packaged }) => {
  const wire = await getCurrentFuseWire(packaged.executable);
  const checksArchive = process.platform === "linux" ? FuseState.DISABLE : FuseState.ENABLE;
  expect(wire[FuseV1Options.RunAsNode]).toBe(FuseState.DISABLE);
  expect(wire[FuseV1Options.EnableNodeOptionsEnvironmentVariable]).toBe(FuseState.DISABLE);
  expect(wire[FuseV1Options.EnableNodeCliInspectArguments]).toBe(FuseState.DISABLE);
  expect(wire[FuseV1Options.OnlyLoadAppFromAsar]).toBe(FuseState.ENABLE);
  expect(wire[FuseV1Options.EnableEmbeddedAsarIntegrityValidation]).toBe(checksArchive);
  expect(wire[FuseV1Options.EnableCookieEncryption]).toBe(FuseState.ENABLE);
  expect(wire[FuseV1Options.GrantFileProtocolExtraPrivileges]).toBe(FuseState.DISABLE);
});

test("it can't be made to run something else, or to open itself to another program", async ({
  stage,
  packaged,
  folder,
}) => {
  const script = join(folder, "other.cjs");
  await writeFile(script, "process.stdout.write('something else ran'); process.exit(0);");
  const port = await freePort();
  // All at once: each would show in a way of its own. A library of somebody's own for the store is for development, and a
  // script for tests.
  const env = {
    ELECTRON_RUN_AS_NODE: "1",
    NODE_OPTIONS: `--require ${script}`,
    TAPELINE_TEST_SCRIPT: script,
    TAPELINE_SQLITE_BINDING: join(folder, "none.node"),
    TAPELINE_DATA: folder,
  };
  const tried = ["--self-check", `--inspect-brk=${port}`, "-r", script];
  const { code, printed } = await runPackaged(stage, packaged, tried, env);
  expect(printed).not.toMatch(/something else ran|Debugger listening/);
  expect(code, printed).toBe(0);
  for (const word of [
    `--remote-debugging-port=${port}`,
    `-remote-debugging-port=${port}`,
    "--remote-debugging-pipe",
  ]) {
    const { code, printed } = await runPackaged(stage, packaged, [word], { TAPELINE_DATA: folder });
    expect.soft(printed, word).toContain("Tapeline does not start with --remote-debugging-");
    expect.soft(printed, word).not.toContain("DevTools listening");
    expect.soft(code, word).toBe(64);
  }
  expect(existsSync(join(folder, "tapeline.sqlite"))).toBe(false);
});

test("a folder put in the archive's place is not run", async ({ stage, packaged, folder }) => {
  const [archive, aside] = [join(packaged.resources, "app.asar"), join(packaged.resources, "aside")];
  const other = join(packaged.resources, "app");
  await mkdir(other);
  await writeFile(join(other, "package.json"), '{ "main": "main.js" }');
  await writeFile(join(other, "main.js"), "console.log('something else ran'); process.exit(0);");
  await rename(archive, aside);
  try {
    const { printed } = await runPackaged(stage, packaged, [], { TAPELINE_DATA: folder });
    expect(printed).not.toContain("something else ran");
  } finally {
    await rename(aside, archive);
    await rm(other, { recursive: true });
  }
});

test("it carries what it needs and nothing else, with the licences of all of it", async ({ packaged }) => {
  const files = listPackage(join(packaged.resources, "app.asar"), { isPack: false }).map((file) =>
    file.replaceAll("\\", "/"),
  );
  const expected =
    /^\/(?:package\.json|out\/main\/main\.js|out\/preload\/preload\.cjs|out\/renderer\/(?:index\.html|assets\/[\w.-]+\.(?:js|css|woff2|svg))|resources\/demo\/\w+\.csv|node_modules\/better-sqlite3\/(?:LICENSE|package\.json|lib\/(?:methods\/)?[\w-]+\.js|prebuilds\/[\w-]+\.node))$/;
  const isFolder = (file: string) => files.some((each) => each.startsWith(`${file}/`));
  expect(files.filter((file) => !isFolder(file) && !expected.test(file))).toEqual([]);
  expect(files.filter((file) => file.endsWith(".node"))).toEqual([
    `/node_modules/better-sqlite3/prebuilds/${process.platform}-${process.arch}.node`,
  ]);
  const beside = await readdir(packaged.notices);
  expect(beside).toEqual(
    expect.arrayContaining(["LICENSE.tapeline.txt", "LICENSES.chromium.html", "THIRD-PARTY-NOTICES.txt"]),
  );
  const notices = await readFile(join(packaged.notices, "THIRD-PARTY-NOTICES.txt"), "utf8");
  const { version } = JSON.parse(await readFile("package.json", "utf8")) as { version: string };
  expect(notices).toBe(noticesText(partsOfProgram(), version));
  for (const part of ["better-sqlite3", "react-aria-components", "electron-log", "@fontsource-variable"]) {
    expect(notices).toContain(`\n${part}`);
  }
});

/** The files of crashes below a data folder. */
async function dumpsIn(folder: string): Promise<string[]> {
  const files = await readdir(folder, { recursive: true });
  return files.filter((file) => file.endsWith(".dmp"));
}

async function freePort(): Promise<number> {
  const server = createServer().listen(0, "127.0.0.1");
  await new Promise((resolve) => server.once("listening", resolve));
  const { port } = server.address() as AddressInfo;
  await new Promise((resolve) => server.close(resolve));
  return port;
}
