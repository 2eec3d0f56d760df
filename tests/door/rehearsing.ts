import { spawn } from "node:child_process";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import Papa from "papaparse";

const script = new URL("../../electron/rehearse.ts", import.meta.url).pathname;
const many = new URL("rehearse-many.ts", import.meta.url).pathname;
export const demoFolder = new URL("../../resources/demo/", import.meta.url).pathname;

/** How a run of the command ended. */
export interface Ran {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
  /** Of many runs: what the folder of the sheets and the temporary one held after it. */
  readonly held?: readonly string[];
}

/** A folder with sheets, in which the real command runs. */
export interface Bench {
  readonly folder: string;
  /** What the command takes for the system's folder for temporary files. */
  readonly temporary: string;
  /** Writes a sheet; returns its path. */
  write(name: string, text: string | Uint8Array): string;
  /** Runs the command as a terminal does; `whileRunning` is given its process id. */
  run(args: readonly string[], whileRunning?: (pid: number) => Promise<void>): Promise<Ran>;
  /** Runs it with one list of arguments after the other, in one process that then ends by itself. */
  runMany(lists: readonly (readonly string[])[]): Promise<readonly Ran[]>;
  /** Text of a file of the results. */
  out(name: string): string;
  /** What the command left there. */
  leftBehind(): string[];
  remove(): void;
}

export function bench(): Bench {
  const folder = mkdtempSync(join(tmpdir(), "rehearse-test-"));
  const temporary = join(folder, "temporary");
  mkdirSync(temporary);
  async function start(args: readonly string[], whileRunning?: (pid: number) => Promise<void>): Promise<Ran> {
    const child = spawn(process.execPath, args, {
      cwd: folder,
      env: { ...process.env, TMPDIR: temporary, npm_lifecycle_event: "test" },
    });
    const said = { stdout: "", stderr: "" };
    for (const name of ["stdout", "stderr"] as const) {
      child[name].setEncoding("utf8").on("data", (text: string) => {
        said[name] += text;
      });
    }
    const ended = new Promise<number | null>((resolve) => child.on("close", (code) => resolve(code)));
    await whileRunning?.(child.pid ?? 0);
    return { code: await ended, ...said };
  }
  return {
    folder,
    temporary,
    write(name, text) {
      writeFileSync(join(folder, name), text);
      return join(folder, name);
    },
    run: (args, whileRunning) => start([script, ...args], whileRunning),
    async runMany(lists) {
      const { code, stdout, stderr } = await start([many, JSON.stringify(lists)]);
      if (code !== 0 || stderr !== "") throw new Error(`The runs ended with ${code}: ${stderr}`);
      return JSON.parse(stdout) as readonly Ran[];
    },
    out: (name) => readFileSync(join(folder, "out", name), "utf8"),
    leftBehind: () => readdirSync(temporary),
    remove: () => rmSync(folder, { recursive: true }),
  };
}

/** Rows of text as a sheet: blanks beside the commas and indentation are only for the eye. */
export function sheet(text: string): string {
  const lines = text.trim().split("\n");
  return `${lines.map((line) => line.trim().replace(/\s*,\s*/g, ",")).join("\r\n")}\r\n`;
}

/** Rows of a sheet by column. */
export function rowsOf(text: string): Record<string, string>[] {
  return Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true }).data;
}

const date = ["--date", "2026-09-19"];
/** A command line with the usual sheets, on the demonstration's date. */
export const usual = ["--roster", "roster.csv", "--results", "results.csv", "--out", "out", ...date];

const kinds = ["roster", "results", "past"] as const;
/** A command line with the demonstration's own sheets. */
export const demo = [
  ...kinds.flatMap((kind) => [`--${kind}`, join(demoFolder, `${kind}.csv`)]),
  ...["--out", "out", ...date],
];

/** Marks as `name test variant: mark unit`, in the order of the file. */
export function marksIn({ out }: Bench): string[] {
  return rowsOf(out("marks.csv")).map(
    ({ name, test, variant, mark, unit }) => `${name} ${test} ${variant}: ${mark} ${unit}`,
  );
}
