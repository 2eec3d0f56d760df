/**
 * Runs the command of `electron/rehearse.ts` with one list of arguments after the other, in one process: to read the program
 * from its sources takes longer than most refusals. Arguments and answers are JSON; paths are relative to where it starts.
 */
import { readdirSync } from "node:fs";
import { tmpdir } from "node:os";
import { stdout } from "node:process";
import type { Ran } from "./rehearsing.ts";

const command = new URL("../../electron/rehearse.ts", import.meta.url);
const own = process.argv.slice(0, 2);
const lists = JSON.parse(process.argv[2] ?? "[]") as readonly (readonly string[])[];
const said = { log: "", error: "" };
for (const stream of ["log", "error"] as const) {
  console[stream] = (...words: unknown[]) => {
    said[stream] += `${words.map(String).join(" ")}\n`;
  };
}
const held = () => [".", tmpdir()].flatMap((folder) => readdirSync(folder)).sort();
const ran: Ran[] = [];
for (const [turn, list] of lists.entries()) {
  Object.assign(said, { log: "", error: "" });
  process.argv = [...own, ...list];
  process.exitCode = -1;
  // Under another name the command itself is read anew, and so runs; what it imports is there.
  await import(`${command.href}?${turn}`);
  ran.push({ code: Number(process.exitCode), stdout: said.log, stderr: said.error, held: held() });
}
process.exitCode = 0;
stdout.write(JSON.stringify(ran));
