import { existsSync } from "node:fs";
import { mkdir, mkdtemp, readdir, readFile, rename, rm, writeFile } from "node:fs/promises";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { homedir, tmpdir } from "node:os";
import { basename, join } from "node:path";
import { listPackage } from "@electron/asar";
import { FuseState, FuseV1Options, getCurrentFuseWire } from "@electron/fuses";
import { expect } from "@playwright/test";
import { hasCommand, projectFolder } from "../../electron/runtime/host.ts";
import { libraries } from "../../resources/packaging/debian/libraries.ts";
import { canMakeDeb, makeDeb } from "../../resources/packaging/debian/make.ts";
import { noticesText, partsOfProgram } from "../../resources/packaging/notices.ts";
import { linkedLibraries, readDeb } from "./deb.ts";
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
  expect(printed).toContain("Everything works on this laptop.");
  expect(printed.match(/^ok {6}/gm)).toHaveLength(10);
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
    `--renderer-cmd-prefix=${process.execPath} ${script}`,
    `--utility-cmd-prefix=${process.execPath} ${script}`,
    "--single-process",
    `--log-file=${join(folder, "pages.log")}`,
  ]) {
    const { code, printed } = await runPackaged(stage, packaged, [word], { TAPELINE_DATA: folder });
    const name = /^-+([a-z-]+)/.exec(word)?.[1] ?? "";
    expect.soft(printed, word).toContain(`Tapeline does not start with --${name}`);
    expect.soft(printed, word).not.toContain("something else ran");
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
    /^\/(?:package\.json|out\/main\/(?:main|(?:backup|calculator|store)-thread|chunks\/[\w-]+)\.js|out\/preload\/preload\.cjs|out\/renderer\/(?:(?:index|join)\.html|assets\/[\w.-]+\.(?:js|css|woff2|svg))|resources\/demo\/\w+\.csv|node_modules\/better-sqlite3\/(?:LICENSE|package\.json|lib\/(?:methods\/)?[\w-]+\.js|prebuilds\/[\w-]+\.node))$/;
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
  for (const part of [
    "better-sqlite3",
    "react-aria-components",
    "electron-log",
    "@fontsource-variable",
    "selfsigned",
  ]) {
    expect(notices).toContain(`\n${part}`);
  }
});

test("the deb says what it is, and brings the whole program, the menu's entry, its icons and its terms", async ({
  packaged,
  folder,
}) => {
  test.skip(!canMakeDeb(), "dpkg-deb makes and reads the deb, and is not on this machine.");
  const program = join(packaged.executable, "..");
  const deb = await readDeb(await makeDeb({ folder: program, outputFolder: folder, unpacked: true }), folder);
  const { version } = JSON.parse(await readFile("package.json", "utf8")) as { version: string };
  expect(deb.fields).toMatchObject({ Package: "tapeline", Version: version, Section: "misc" });
  expect(deb.fields.Maintainer).toMatch(/^the Tapeline authors <\S+@\S+>$/);
  // What it unpacks to, in KiB, give or take the rounding of each file (deb-substvars(5)).
  const bytes = [...deb.files.values()].reduce((sum, { size }) => sum + size, 0);
  expect(Number(deb.fields["Installed-Size"]) - bytes / 1024).toBeGreaterThan(0);
  expect(Number(deb.fields["Installed-Size"]) - bytes / 1024).toBeLessThan(deb.files.size);
  // All of it is root's, nobody else writes to it, and one program alone runs as root.
  expect([...deb.files.values()].filter(({ owner }) => owner !== "root/root")).toEqual([]);
  const special = [...deb.files].filter(
    ([, { mode }]) => !/^(?:l|drwxr-xr-x|-rwxr-xr-x|-rw-r--r--)/.test(mode),
  );
  expect(special.map(([name, { mode }]) => [name, mode])).toEqual([
    ["/usr/lib/tapeline/chrome-sandbox", "-rwsr-xr-x"],
  ]);
  expect(deb.files.get("/usr/bin/tapeline")?.target).toBe("../lib/tapeline/tapeline");
  const missing = (await readdir(program, { recursive: true })).filter(
    (name) => !deb.files.has(`/usr/lib/tapeline/${name}`),
  );
  expect(missing).toEqual([]);
  for (const size of ["16x16", "32x32", "48x48", "64x64", "128x128", "256x256", "512x512"]) {
    expect(deb.files.has(`/usr/share/icons/hicolor/${size}/apps/tapeline.png`), size).toBe(true);
  }
  expect(deb.read("usr/share/applications/tapeline.desktop")).toContain("\nComment[es]=");
  expect(deb.read("usr/share/doc/tapeline/copyright")).toContain(await readFile("LICENSE", "utf8"));
  expect(deb.read("usr/share/doc/tapeline/THIRD-PARTY-NOTICES.txt")).toContain("\nbetter-sqlite3 ");
  // Where it was made, and whose machine that was; root's home is the same everywhere.
  const homes = [homedir()].filter((home) => home !== "/root");
  expect(deb.pathsOf([projectFolder, program, folder, ...homes])).toEqual([]);
});

test("the deb asks for a package for every library that any of its files is linked to", async ({
  packaged,
}) => {
  test.skip(
    !hasCommand("objdump"),
    "objdump (package binutils) reads what is linked, and is not on this machine.",
  );
  const program = join(packaged.executable, "..");
  const names = await readdir(program, { recursive: true });
  const linked = await linkedLibraries(names.map((name) => join(program, name)));
  expect(linked.size).toBeGreaterThan(25);
  const brought = new Set(names.map((name) => basename(name)));
  expect([...linked].filter((name) => !(name in libraries) && !brought.has(name))).toEqual([]);
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
