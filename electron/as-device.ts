import { powerSaveBlocker } from "electron";
import type { Desk } from "./api/door/desk.ts";
import { anyHeatRuns } from "./api/heat/running.ts";
import { membershipFiles } from "./host/membership-files.ts";
import { createMembership, type Membership } from "./network/membership.ts";
import { createDeviceAnswer } from "./shell/scheme/answer.ts";
import type { BuildFiles } from "./shell/scheme/build-files.ts";
import type { DeskHost } from "./shell/scheme/hosts.ts";
import { serveHost, wipeDevice } from "./shell/scheme/scheme.ts";
import { systemSealer } from "./shell/seal.ts";
import { awakeSwitch } from "./shell/windows/keep-awake.ts";
import type { Windows } from "./shell/windows/windows.ts";

/** This program as a device of another laptop's table. */
export interface AsDevice {
  readonly membership: Membership;
  /** Which pages the laptop's window shows now. */
  host(): DeskHost;
  /** From now on the window shows the device while it is one, and the desk otherwise. */
  follow(windows: Windows): void;
}

/** Puts the parts of it together; nothing connects before somebody joins a table, or is still joined to one. */
export function prepareDevice(desk: Desk, folder: string, files: BuildFiles): AsDevice {
  const keepAwake = awakeSwitch(powerSaveBlocker);
  let windows: Windows | null = null;
  let isServed = false;
  const membership = createMembership({
    keep: membershipFiles(folder, systemSealer),
    mayJoin: () => mayJoin(desk),
    language: () => desk.language,
    // Once the page has its answer: its window goes.
    changed: (left) => setImmediate(change, left),
  });
  const host = () => (membership.state().is === "apart" ? "desk" : "device");

  /** Only once it is a device: a session on the disk writes there even while the program ends. */
  function serve(): void {
    if (isServed || host() !== "device") return;
    isServed = true;
    serveHost("device", createDeviceAnswer(files, membership.answerDevice));
  }
  function apply(): void {
    serve();
    const shown = host();
    keepAwake(shown === "device");
    // A laptop with a PIN is as shut at a station as one that was handed over, and comes back locked.
    if (shown === "device") desk.lock.lock("hand");
    windows?.show(shown);
  }
  function change(left: boolean): void {
    apply();
    // One that was let go has deleted what it had to; what the table never had waits for the next time it joins.
    if (left) void wipeDevice();
  }

  // The first window may show the device already.
  serve();
  return {
    membership,
    host,
    follow(given) {
      windows = given;
      apply();
    },
  };
}

/** True while the organiser is at this laptop, and nothing on it needs it: no device of its own, no heat. */
function mayJoin(desk: Desk): boolean {
  const isTable = (desk.network?.view().on ?? null) !== null;
  return desk.lock.who().role === "organiser" && !isTable && !anyHeatRuns(desk);
}
