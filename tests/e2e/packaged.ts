import { spawn } from "node:child_process";
import { once } from "node:events";
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { run } from "../../electron/runtime/host.ts";
import { english, type Stage } from "./launch.ts";

/** The program as it is handed on. */
export interface Packaged {
  readonly executable: string;
  /** The folder that holds its archive. */
  readonly resources: string;
  /** Where its licences and notices stand. */
  readonly notices: string;
}

/** Makes the folder of the program below `output`, as `npm run package` does, from what is built. */
export async function makePackaged(output: string): Promise<Packaged> {
  await run(process.execPath, ["resources/packaging/package.ts", "--folder", "--output", output]);
  const folder = join(output, readdirSync(output).find((name) => /unpacked|^mac/.test(name)) ?? "");
  if (process.platform === "darwin") {
    const contents = join(folder, "Tapeline.app", "Contents");
    const executable = join(contents, "MacOS", "Tapeline");
    return { executable, resources: join(contents, "Resources"), notices: contents };
  }
  const name = process.platform === "win32" ? "Tapeline.exe" : "tapeline";
  return { executable: join(folder, name), resources: join(folder, "resources"), notices: folder };
}

/** Far more than it takes on a slow machine that does other things too. */
const limitMs = 600_000;

/** How a start of the packaged program went. */
export interface Ran {
  readonly code: number | null;
  readonly printed: string;
}

/**
 * Starts the packaged program with `args`, waits until it ends (or until `enough` of what it printed, and ends it
 * then), and tells how that went.
 */
export async function runPackaged(
  stage: Stage,
  { executable }: Packaged,
  args: readonly string[],
  env: Record<string, string> = {},
  enough: () => Promise<boolean> = () => Promise.resolve(false),
): Promise<Ran> {
  // The switches of the machine, not those of the project: no sandbox for root, no graphics without a display.
  const machine = [...stage.runtime.args.filter((each) => each.startsWith("--")), ...stage.display.args];
  const program = spawn(executable, [...args, ...machine], {
    env: { ...process.env, ...english, ...stage.display.env, ...env },
    stdio: ["ignore", "pipe", "pipe"],
  });
  let printed = "";
  for (const stream of [program.stdout, program.stderr]) {
    stream.on("data", (text) => {
      printed += text;
    });
  }
  const ended = once(program, "exit") as Promise<[number | null]>;
  const overdue = setTimeout(() => program.kill("SIGKILL"), limitMs);
  while (program.exitCode === null && program.signalCode === null) {
    if (await enough()) program.kill();
    await Promise.race([ended, new Promise((resolve) => setTimeout(resolve, 50))]);
  }
  clearTimeout(overdue);
  const [code] = await ended;
  return { code, printed };
}
