import { expect, it } from "vitest";
import { hasDisplay } from "../../../electron/runtime/host.ts";
import { missingLibraries } from "../../../electron/runtime/libraries.ts";
import { installCommand, lockHolder, namesHere } from "../../../electron/runtime/packages.ts";
import { helperCommand } from "../../../electron/runtime/sandbox.ts";

// The layout of what ldd(1) of glibc prints; addresses and folders made up.
const LDD = `	linux-vdso.so.1 (0x00007ffd0c5f2000)
	libffmpeg.so => /opt/electron/libffmpeg.so (0x00007f1b0a800000)
	libnss3.so => not found
	libnssutil3.so => not found
	libdbus-1.so.3 => /lib/x86_64-linux-gnu/libdbus-1.so.3 (0x00007f1b15bb2000)
	libgtk-3.so.0 => not found
	libnss3.so => not found
	/lib64/ld-linux-x86-64.so.2 (0x00007f1b15f20000)
`;

it("reads the missing libraries, each once, from what ldd prints", () => {
  expect(missingLibraries(LDD)).toEqual(["libnss3.so", "libnssutil3.so", "libgtk-3.so.0"]);
  expect(missingLibraries(LDD.replaceAll("not found", "/lib/found.so (0x0)"))).toEqual([]);
});

it("does not take a symbol version that is too old for a missing library", () => {
  const tooOld = "./electron: /lib/libc.so.6: version `GLIBC_2.36' not found (required by ./electron)\n";
  expect(missingLibraries(tooOld)).toEqual([]);
});

it("takes the t64 name of a package where the system knows it", () => {
  // Renamed in Ubuntu 24.04 and Debian 13: wiki.debian.org/ReleaseGoals/64bit-time
  const newer = new Set(["libgtk-3-0t64", "libasound2t64", "libnss3", "libgbm1"]);
  const names = namesHere(["libgtk-3-0", "libnss3", "libasound2", "libgbm1"], newer);
  expect(names).toEqual(["libgtk-3-0t64", "libnss3", "libasound2t64", "libgbm1"]);
});

it("keeps the plain names on an older system and on one that knows no packages yet", () => {
  expect(namesHere(["libgtk-3-0", "libnss3"], new Set(["libgtk-3-0", "libnss3"]))).toEqual([
    "libgtk-3-0",
    "libnss3",
  ]);
  expect(namesHere(["libcups2"], new Set())).toEqual(["libcups2"]);
});

it("prints one command for somebody who is not root", () => {
  expect(installCommand(["xvfb", "libgbm1"])).toBe(
    "sudo apt-get update && sudo apt-get install -y xvfb libgbm1",
  );
});

it("finds a display wherever windows can be shown", () => {
  expect(hasDisplay("linux", {})).toBe(false);
  expect(hasDisplay("linux", { DISPLAY: "" })).toBe(false);
  expect(hasDisplay("linux", { DISPLAY: ":0" })).toBe(true);
  expect(hasDisplay("linux", { WAYLAND_DISPLAY: "wayland-0" })).toBe(true);
  expect(hasDisplay("darwin", {})).toBe(true);
  expect(hasDisplay("win32", {})).toBe(true);
});

it("prints one command that gives the sandbox helper its rights", () => {
  expect(helperCommand("/home/mira/tape line/chrome-sandbox")).toBe(
    'sudo chown root:root "/home/mira/tape line/chrome-sandbox" && sudo chmod 4755 "/home/mira/tape line/chrome-sandbox"',
  );
});

// What apt 2.6.1 and dpkg 1.21.22 of Debian 12 print, tried with each lock held by another program.
it("tells who holds the lock that apt-get could not get", () => {
  const lists =
    "E: Could not get lock /var/lib/apt/lists/lock. It is held by process 18029 (apt-get)\nE: Unable to lock directory /var/lib/apt/lists/";
  const frontend =
    "E: Could not get lock /var/lib/dpkg/lock-frontend. It is held by process 15881 (unattended-upgr)\nE: Unable to acquire the dpkg frontend lock (/var/lib/dpkg/lock-frontend), is another process using it?";
  const older = "E: Could not get lock /var/lib/apt/lists/lock - open (11: Resource temporarily unavailable)";
  const dpkg = "dpkg: error: dpkg frontend lock was locked by another process with pid 641";
  expect(lockHolder(lists)).toBe("apt-get (process 18029)");
  expect(lockHolder(frontend)).toBe("unattended-upgr (process 15881)");
  expect(lockHolder(older)).toBe("Another program");
  expect(lockHolder(dpkg)).toBe("Another program (process 641)");
});

it("does not wait for a lock when apt-get failed for another reason", () => {
  expect(lockHolder("E: Unable to locate package libgtk-3-0")).toBeUndefined();
  expect(lockHolder("E: You don't have enough free space in /var/cache/apt/archives/.")).toBeUndefined();
});
