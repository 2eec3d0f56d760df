/**
 * `npm run fresh`: makes a new machine out of this system's own release and asks it for the runtime from three
 * processes at once, while somebody else's apt-get holds the lists. A machine that has Electron's libraries already
 * can't show whether that works. `-- whole` holds the README's two commands there instead, from nothing: a clone of
 * the last commit, `npm ci && npm test`, then two starts at once; `--node FILE` gives the machine another Node.
 * Ends with 0 when everything was as it must be, 1 when something was not, 2 where no machine can be made.
 */
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { dirname, join, resolve } from "node:path";
import { parseArgs } from "node:util";
import { projectFolder, run } from "../electron/runtime/host.ts";
import { type Machine, makeMachine, whyNoMachine } from "./fresh/machine.ts";

/** Holds the lists' lock, as a system's own update does, until it is told to go on. */
const SOMEBODY_ELSE =
  "apt-get update -qq -o APT::Update::Pre-Invoke::='touch /tmp/held; until test -e /tmp/go-on; do sleep 0.2; done'";
const GO_ON = "touch /tmp/go-on";
const PREPARE = "node tests/fresh/prepare-here.ts";
const STARTS = 3;

/** Three processes that find nothing prepared, and somebody else who was there first. */
async function prepareAtOnce(machine: Machine): Promise<boolean> {
  const other = machine.run(SOMEBODY_ELSE, silent);
  await machine.run("until test -e /tmp/held; do sleep 0.1; done", silent);
  const lines: string[] = [];
  const codes = await Promise.all(
    Array.from({ length: STARTS }, (_, index) =>
      machine.run(PREPARE, (line) => {
        console.log(`  [${index + 1}] ${line}`);
        lines.push(line);
        if (isWaiting(line)) void machine.run(GO_ON, silent);
      }),
    ),
  );
  // Also where nobody waited, which is told below.
  await machine.run(GO_ON, silent);
  await other;
  const installs = lines.filter((line) => line.includes("Installing with apt-get"));
  const waits = lines.filter(isWaiting).length;
  const again = await machine.run(PREPARE, tell);
  return [
    held(
      `${STARTS} processes at once are ready`,
      codes.every((code) => code === 0),
      codes.join(", "),
    ),
    held(
      "what was missing was installed, and nothing twice",
      installs.length > 0 && new Set(installs).size === installs.length,
      installs.join("; "),
    ),
    held("it waited for somebody else's apt-get, and said so", waits === 1, `${waits}`),
    held("a later one finds everything", again === 0, `${again}`),
  ].every(Boolean);
}

function isWaiting(line: string): boolean {
  return line.includes("Waiting until it has finished");
}

/** The README's commands as a newcomer gives them. */
async function wholeFrontDoor(machine: Machine): Promise<boolean> {
  const tested = await timed("npm ci && npm test", () => machine.run("npm ci && npm test", tell));
  return held("npm ci && npm test", tested === 0, `ends with ${tested}`);
}

/** Two starts at once of a fresh checkout; the program tries itself and ends. */
async function startTwice(machine: Machine): Promise<boolean> {
  await timed("npm ci", () => machine.run("npm ci", tell));
  const start = (index: number) =>
    machine.run(`TAPELINE_DATA=/tmp/data-${index} npm start -- --self-check`, (line) =>
      console.log(`  [${index}] ${line}`),
    );
  const codes = await timed("npm start, twice at once", () => Promise.all([start(1), start(2)]));
  return held(
    "two starts at once",
    codes.every((code) => code === 0),
    codes.join(", "),
  );
}

async function timed<T>(what: string, work: () => Promise<T>): Promise<T> {
  const started = performance.now();
  const result = await work();
  console.log(`${what}: ${((performance.now() - started) / 60_000).toFixed(1)} min`);
  return result;
}

function held(what: string, ok: boolean, found: string): boolean {
  console.log(`${ok ? "ok    " : "FAILED"} ${what}${ok ? "" : `: ${found}`}`);
  return ok;
}

function silent(): void {}

function tell(line: string): void {
  console.log(`  ${line}`);
}

async function onMachine(
  project: string,
  node: string,
  work: (machine: Machine) => Promise<boolean>,
): Promise<boolean> {
  const npm = dirname(dirname(process.env.npm_execpath ?? ""));
  const machine = await timed("a new machine", () => makeMachine({ project, node, npm }));
  try {
    return await work(machine);
  } finally {
    await machine.remove();
  }
}

/** A clone of what is committed, with nothing beside it. */
async function withClone(work: (folder: string) => Promise<boolean>): Promise<boolean> {
  const folder = await mkdtemp(join(tmpdir(), "tapeline-clone-"));
  try {
    await run("git", ["clone", "--quiet", projectFolder, join(folder, "tapeline")]);
    return await work(join(folder, "tapeline"));
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

const { positionals, values } = parseArgs({ allowPositionals: true, options: { node: { type: "string" } } });
const reason = whyNoMachine();
const node = resolve(values.node ?? process.execPath);
if (reason !== undefined) {
  console.log(`No new machine can be made here, so nothing was tried. ${reason}`);
  process.exitCode = 2;
} else {
  const ok =
    positionals[0] === "whole"
      ? await withClone(async (clone) => {
          const tested = await onMachine(clone, node, wholeFrontDoor);
          return (await onMachine(clone, node, startTwice)) && tested;
        })
      : await onMachine(projectFolder, node, prepareAtOnce);
  process.exitCode = ok ? 0 : 1;
}
