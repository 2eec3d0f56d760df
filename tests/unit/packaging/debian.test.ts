import { spawnSync } from "node:child_process";
import { chmodSync, lstatSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, relative } from "node:path";
import { afterEach, expect, test, vi } from "vitest";
import { hasCommand } from "../../../electron/runtime/host.ts";
import { controlText, debianVersion } from "../../../resources/packaging/debian/control.ts";
import { desktopEntryText } from "../../../resources/packaging/debian/desktop-entry.ts";
import { neededPackages } from "../../../resources/packaging/debian/libraries.ts";
import { offerDeb } from "../../../resources/packaging/debian/make.ts";
import { layTree } from "../../../resources/packaging/debian/tree.ts";

const folder = mkdtempSync(join(tmpdir(), "tapeline-debian-"));
afterEach(() => {
  vi.unstubAllEnvs();
  rmSync(folder, { recursive: true, force: true });
});

test.skipIf(!hasCommand("dpkg"))("a version before a release comes before it for dpkg too", () => {
  const order = ["1.0.0-alpha.1", "1.0.0-beta.2", "1.0.0-beta.10", "1.0.0", "1.0.1-beta.1", "1.0.1"];
  for (const [index, later] of order.slice(1).entries()) {
    const versions = [order[index] ?? "", later].map(debianVersion);
    const words = ["--compare-versions", versions[0] ?? "", "lt", versions[1] ?? ""];
    expect(spawnSync("dpkg", words).status, versions.join(" < ")).toBe(0);
  }
});

test("the control file keeps to the form that Debian Policy gives it", () => {
  const text = controlText({ version: "1.2.3-beta.4", installedSize: 240_000 });
  // Policy 5.1: a field's further lines begin with a space, none is empty, and the last ends.
  expect(text).toMatch(/^(?:[A-Z][A-Za-z-]*: \S.*\n(?: (?:\.|\S.*)\n)*)+$/);
  // Policy 3.4.1: at most 80 characters of synopsis, no full stop; 5.6.13: lines that a terminal shows whole.
  expect(/^Description: (.{1,80})$/m.exec(text)?.[1]).not.toMatch(/\.$|^(?:an?|the) /i);
  expect(text.split("\n").filter((line) => line.startsWith(" ") && line.length > 80)).toEqual([]);
  expect(text).toContain("\nVersion: 1.2.3~beta.4\n");
  expect(text).toContain("\nInstalled-Size: 240000\n");
});

test("what was renamed for 64-bit time is asked for by either name", () => {
  // Debian 13 as installed (`dpkg -l '*t64'`): the only ones of ours whose names end so there.
  const renamed = ["libasound2", "libatk-bridge2.0-0", "libatk1.0-0", "libatspi2.0-0", "libcups2"];
  const all = [...renamed, "libglib2.0-0", "libgtk-3-0"];
  expect(neededPackages().filter((name) => name.includes("|"))).toEqual(
    all.map((name) => `${name} | ${name}t64`),
  );
});

test("the menu's entry keeps to the form that freedesktop.org gives it, in each language", () => {
  const text = desktopEntryText();
  // Desktop Entry Specification 1.5, 3 (basic format), 5 (localised values), 6 (which keys there must be).
  expect(text).toMatch(/^\[Desktop Entry\]\n(?:[A-Za-z-]+(?:\[[a-z]+\])?=\S.*\n)+$/);
  for (const key of ["Type", "Name", "Exec", "Icon", "Categories", "Comment", "Comment\\[es\\]"]) {
    expect(text.match(new RegExp(`^${key}=`, "gm")), key).toHaveLength(1);
  }
  // A list ends with a semicolon (4, possible value types).
  expect(text.match(/^(?:Categories|Keywords(?:\[es\])?)=.*(?<!;)$/gm)).toBeNull();
});

test("where dpkg is missing, a sentence says so and what to do", async () => {
  vi.stubEnv("PATH", folder);
  const said = await offerDeb({ folder, outputFolder: folder });
  expect(said).toMatch(/dpkg-deb.*Debian and Ubuntu.*Package it there\./);
});

test("whatever the modes and the umask of the machine, nobody but root may write, and everybody may read", async () => {
  const [program, root] = [join(folder, "program"), join(folder, "root")];
  layProgram(program);
  mkdirSync(root);
  chmodSync(root, 0o755);
  const umask = process.umask(0o077);
  try {
    await layTree(root, program);
  } finally {
    process.umask(umask);
  }
  const entries = readdirSync(root, { recursive: true, encoding: "utf8" });
  const modes = new Map(entries.map((name) => [name, lstatSync(join(root, name))]));
  for (const [name, info] of modes) {
    if (info.isSymbolicLink()) continue;
    const allowed = info.isDirectory() ? [0o755] : [0o644, 0o755, 0o4755];
    expect(allowed, name).toContain(info.mode & 0o7777);
  }
  const modeOf = (name: string) => (modes.get(join("usr/lib/tapeline", name))?.mode ?? 0) & 0o7777;
  expect(modeOf("chrome-sandbox")).toBe(0o4755);
  expect(modeOf("tapeline")).toBe(0o755);
  expect(modeOf("libvulkan.so.1")).toBe(0o644);
  const special = [...modes].filter(([, { mode }]) => (mode & 0o7000) !== 0).map(([name]) => name);
  expect(special.map((name) => relative("usr/lib/tapeline", name))).toEqual(["chrome-sandbox"]);
});

/** A program's folder with the worst of modes. */
function layProgram(program: string): void {
  mkdirSync(join(program, "resources"), { recursive: true });
  const texts = ["LICENSE.tapeline.txt", "THIRD-PARTY-NOTICES.txt", "resources/app.asar", "version"];
  for (const name of texts) writeFileSync(join(program, name), name);
  for (const name of ["tapeline", "chrome-sandbox", "libvulkan.so.1"]) {
    writeFileSync(join(program, name), name);
    chmodSync(join(program, name), 0o2777);
  }
  chmodSync(join(program, "version"), 0o666);
  chmodSync(join(program, "resources"), 0o777);
}
