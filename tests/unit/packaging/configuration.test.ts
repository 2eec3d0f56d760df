import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { validateConfiguration } from "app-builder-lib/out/util/config/config.js";
import { DebugLogger } from "builder-util";
import type { Configuration } from "electron-builder";
import { describe, expect, test } from "vitest";
import { projectFolder } from "../../../electron/runtime/host.ts";
import { configurationOf, installers, type System } from "../../../resources/packaging/configuration.ts";

const parts = {
  electronVersion: "1.2.3",
  electronFolder: "electron",
  sqlite: [{ from: "sqlite", to: "node_modules/better-sqlite3", filter: ["*.node"] }],
  notices: "notices",
  outputFolder: "out-of-the-way",
};
const systems: readonly System[] = ["linux", "darwin", "win32"];
const partOf = { linux: "linux", darwin: "mac", win32: "win" } as const;

/** The configuration with the kinds of installer where electron-builder itself reads them. */
function withTargets(system: System): Configuration {
  const configuration = configurationOf(parts, system);
  const part = partOf[system];
  return { ...configuration, [part]: { ...configuration[part], target: [...installers[system]] } };
}

describe.each(systems)("%s", (system) => {
  test("electron-builder's own rules let the configuration and its targets pass", async () => {
    await expect(validateConfiguration(withTargets(system), new DebugLogger(false))).resolves.toBeUndefined();
  });

  test("everybody's program has one id, one archive, its library outside, and nothing is uploaded", () => {
    const configuration = configurationOf(parts, system);
    expect(configuration.appId).toBe("org.tapeline.desk");
    expect(configuration.asar).toBe(true);
    expect(configuration.asarUnpack).toEqual(["**/*.node"]);
    expect(configuration.publish).toBeNull();
  });

  test("the fuses shut Node's ways in, and the archive is checked where Electron can", () => {
    expect(configurationOf(parts, system).electronFuses).toEqual({
      runAsNode: false,
      enableNodeOptionsEnvironmentVariable: false,
      enableNodeCliInspectArguments: false,
      onlyLoadAppFromAsar: true,
      // Electron, "ASAR Integrity": on macOS and Windows alone.
      enableEmbeddedAsarIntegrityValidation: system !== "linux",
      enableCookieEncryption: true,
      grantFileProtocolExtraPrivileges: false,
      resetAdHocDarwinSignature: system === "darwin",
    });
  });

  test("its icon is there", () => {
    const icon = configurationOf(parts, system)[partOf[system]]?.icon;
    expect(existsSync(join(projectFolder, String(icon)))).toBe(true);
  });
});

test("electron-builder's rules are really asked: they refuse what it does not know", async () => {
  const log = new DebugLogger(false);
  const unknownKind = { mac: { target: ["floppy"] } } as unknown as Configuration;
  await expect(validateConfiguration(unknownKind, log)).rejects.toThrow(/configuration\.mac\.target/);
  const unknownOption = { win: { icons: "none" } } as unknown as Configuration;
  await expect(validateConfiguration(unknownOption, log)).rejects.toThrow(/configuration\.win/);
});

test("every system has installers, and Windows asks where to", () => {
  expect(installers).toEqual({ linux: ["AppImage"], darwin: ["dmg", "zip"], win32: ["nsis"] });
  const { nsis } = configurationOf(parts, "win32");
  expect(nsis).toEqual({ oneClick: false, allowToChangeInstallationDirectory: true });
});

test("the icons hold the sizes that the systems ask for", () => {
  const read = (name: string) => readFileSync(join(projectFolder, "resources/icons", name));
  // .ico: a count at 4, then entries of 16 bytes that begin with the width, 0 for 256 (electron-builder needs that one).
  const ico = read("tapeline.ico");
  const widths = Array.from({ length: ico.readUInt16LE(4) }, (_, index) => ico[6 + index * 16]);
  expect(widths).toEqual(expect.arrayContaining([16, 32, 48, 0]));
  // .icns: "icns", then kinds; ic09 is 512 by 512 (electron-builder needs that one).
  const icns = read("tapeline.icns");
  expect(icns.toString("latin1", 0, 4)).toBe("icns");
  expect(icns.includes("ic09")).toBe(true);
  // hicolor: each PNG is as large as its name says (width at 16, height at 20).
  for (const name of readdirSync(join(projectFolder, "resources/icons/linux"))) {
    const picture = read(join("linux", name));
    expect(`${picture.readUInt32BE(16)}x${picture.readUInt32BE(20)}.png`).toBe(name);
  }
});
