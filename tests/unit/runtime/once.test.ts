import { spawnSync } from "node:child_process";
import { mkdir, mkdtemp, readdir, readFile, rm, utimes, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { afterEach, beforeEach, expect, it } from "vitest";
import { makeOnce } from "../../../electron/runtime/once.ts";

let cache: string;
let lines: string[];
const log = (line: string): void => void lines.push(line);

beforeEach(async () => {
  cache = await mkdtemp(join(tmpdir(), "tapeline-once-"));
  lines = [];
});
afterEach(() => rm(cache, { recursive: true }));

/** A number that belonged to a process which has ended. */
function deadProcess(): number {
  return spawnSync(process.execPath, ["--version"]).pid;
}

it("fills a folder once, however many want it at the same time, and later not again", async () => {
  const folder = join(cache, "runtime");
  let fills = 0;
  const fill = async (unfinished: string): Promise<void> => {
    fills += 1;
    // Until both others wait for it.
    while (lines.length < 2) await sleep(1);
    await writeFile(join(unfinished, "electron"), "complete");
  };
  await Promise.all([1, 2, 3].map(() => makeOnce(folder, log, fill)));
  await makeOnce(folder, log, fill);
  expect(fills).toBe(1);
  expect(await readFile(join(folder, "electron"), "utf8")).toBe("complete");
  expect(await readdir(cache)).toEqual(["runtime"]);
  expect(lines).toEqual(Array(2).fill("Another Tapeline process is preparing the runtime. Waiting for it."));
});

it("never shows the folder before it is complete", async () => {
  const folder = join(cache, "runtime");
  await makeOnce(folder, log, async (unfinished) => {
    await writeFile(join(unfinished, "half"), "");
    expect(await readdir(cache)).not.toContain("runtime");
  });
  expect(await readdir(folder)).toEqual(["half"]);
});

it("leaves nothing behind when filling fails, and the next run can succeed", async () => {
  const folder = join(cache, "runtime");
  const failure = makeOnce(folder, log, async (unfinished) => {
    await writeFile(join(unfinished, "half"), "");
    throw new Error("no space left on device");
  });
  await expect(failure).rejects.toThrow("no space left on device");
  expect(await readdir(cache)).toEqual([]);
  await makeOnce(folder, log, (unfinished) => writeFile(join(unfinished, "electron"), ""));
  expect(await readdir(folder)).toEqual(["electron"]);
});

it("clears up after a run that was killed, at once", async () => {
  const pid = deadProcess();
  await writeFile(join(cache, "lock"), String(pid));
  await mkdir(join(cache, `runtime.unfinished-${pid}`));
  await mkdir(join(cache, `runtime.unfinished-${pid}-parts`));
  await mkdir(join(cache, "runtime-2"));
  await makeOnce(join(cache, "runtime"), log, (unfinished) => writeFile(join(unfinished, "electron"), ""));
  expect((await readdir(cache)).sort()).toEqual(["runtime", "runtime-2"]);
  expect(lines).toEqual([]);
});

it("takes over a lock that nobody has touched for a while, though its number is in use again", async () => {
  const lock = join(cache, "lock");
  await writeFile(lock, String(process.pid));
  const aMinuteAgo = new Date(Date.now() - 60_000);
  await utimes(lock, aMinuteAgo, aMinuteAgo);
  await makeOnce(join(cache, "runtime"), log, (unfinished) => writeFile(join(unfinished, "electron"), ""));
  expect(await readdir(cache)).toEqual(["runtime"]);
});
