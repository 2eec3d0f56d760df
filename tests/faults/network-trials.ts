import { rm } from "node:fs/promises";
import { setTimeout as wait } from "node:timers/promises";
import { reportPlanks } from "./plank-report.ts";
import { runPlanks } from "./planks.ts";
import { tryPuddle } from "./puddles.ts";
import { startTable } from "./table-process.ts";
import { reportTakeovers } from "./takeover-report.ts";
import { type TakeoverNetwork, tryTakeovers } from "./takeovers.ts";
import { buildDevicePage, settle, startHall, type TrialHall, type Verdict } from "./trial-hall.ts";

/**
 * `npm run faults:network [-- faults|puddle|both|plank|takeover|quick [ROUNDS [SEED [SILENT_SECONDS]]]]`: what becomes of entries
 * and heats at devices in Chromium when the network or the table fails. Prints figures, and ends with 1 when anything was
 * lost, doubled or different.
 */
const [what = "both", ...figures] = process.argv.slice(2);
const [rounds = 20, seed = Date.now() % 1_000_000_000, silentSeconds = 60] = figures.map(Number);
const lanes = 8;
/** A plank of four minutes, and where the network is dead in the middle of it; stops between whole seconds. */
const plank = {
  stopsMs: [45_500, 100_500, 140_500, 175_500, 241_500],
  deadFromMs: 90_000,
  deadForMs: silentSeconds * 1_000,
};
const perFault = 120;
const perPuddle = { entries: 400, awayMs: 6_000, limitMs: 150_000 };

interface Trial {
  readonly name: string;
  /** Runs while entries are made, and ends the fault. */
  readonly during: (hall: TrialHall) => Promise<void>;
}

const faults: readonly Trial[] = [
  { name: "none", during: async () => undefined },
  { name: "300 ms late", during: (hall) => under(hall, { delayMs: 300 }, 6) },
  { name: "jitter of 800 ms", during: (hall) => under(hall, { delayMs: 50, jitterMs: 800 }, 6) },
  { name: "connections lost", during: cutOften },
  { name: "half-open sockets", during: abandonTwice },
  { name: "answers lost 6 s", during: loseAnswers },
  { name: `${silentSeconds} s of nothing`, during: (hall) => under(hall, { held: true }, silentSeconds) },
  { name: "slow reads", during: (hall) => under(hall, { slowBytes: 64 }, 8) },
  { name: "table killed", during: killAndStart },
];

async function under({ proxy }: TrialHall, fault: Parameters<TrialHall["proxy"]["set"]>[0], seconds: number) {
  proxy.set(fault);
  await wait(seconds * 1_000);
  proxy.set({});
}

async function cutOften({ proxy }: TrialHall): Promise<void> {
  for (let times = 0; times < 30; times += 1) {
    await wait(100);
    proxy.cut();
  }
}

async function abandonTwice({ proxy }: TrialHall): Promise<void> {
  for (const ms of [300, 2_000]) {
    await wait(ms);
    proxy.abandon();
  }
}

/** The table takes everything, and nobody hears of it. */
async function loseAnswers({ proxy }: TrialHall): Promise<void> {
  proxy.set({ silent: "answers" });
  await wait(6_000);
  proxy.set({});
  proxy.cut();
}

async function killAndStart(hall: TrialHall): Promise<void> {
  for (const ms of [500, 1_500]) {
    await wait(ms);
    await hall.table.kill();
    await wait(1_000);
    hall.table = await startTable(hall.orders);
  }
}

async function tryFault(pages: string, trial: Trial, index: number): Promise<Verdict> {
  const hall = await startHall(pages, { seed: seed + index, athletes: perFault });
  try {
    await hall.enter(perFault / 4, 5);
    await Promise.all([trial.during(hall), hall.enter((perFault * 3) / 4, 40)]);
    return await settle(hall, perPuddle.limitMs);
  } finally {
    await hall.close();
  }
}

let wrong = 0;
function print(name: string, { acknowledged, lost, doubled, refused, seconds }: Verdict, said = ""): void {
  const figuresOf = [acknowledged, lost, doubled, refused].map((each) => String(each).padStart(7));
  console.log(`${name.padEnd(20)}${figuresOf.join("")}${seconds.toFixed(1).padStart(9)} s  ${said}`);
  wrong += lost + doubled + refused;
}

function printReport(report: { readonly wrong: readonly string[]; readonly lines: readonly string[] }): void {
  for (const line of report.lines) console.log(line);
  for (const line of report.wrong) console.error(`  WRONG ${line}`);
  wrong += report.wrong.length;
}

async function tryEntries(): Promise<void> {
  console.log(`Seed ${seed}. Of each: acknowledged, lost, doubled, refused, until all is there again.`);
  const pages = await buildDevicePage();
  if (what !== "puddle") {
    for (const [index, trial] of faults.entries()) print(trial.name, await tryFault(pages, trial, index));
  }
  for (let round = 1; what !== "faults" && round <= rounds; round += 1) {
    const { equal, said, ...verdict } = await tryPuddle({ ...perPuddle, pages, seed: seed + round * 7_919 });
    print(`puddle ${round}`, verdict, `${said}, marks ${equal ? "equal" : "DIFFER"}`);
    if (!equal) wrong += 1;
  }
  await rm(pages, { recursive: true });
}

/** On a quick network nothing may be said, and what the machine itself takes counts: so fewer at once. */
const lanesOf = { hall: lanes, quick: 2 } as const;

async function tryTakeoversHere(network: TakeoverNetwork): Promise<void> {
  console.log(
    `Seed ${seed}. ${rounds} heats started at a device and seen by another page of it, ${network}.`,
  );
  const pages = await buildDevicePage();
  const orders = { pages, count: rounds, seed, lanes: lanesOf[network], network };
  printReport(reportTakeovers(await tryTakeovers(orders), network));
  await rm(pages, { recursive: true });
}

async function tryPlanksHere(): Promise<void> {
  console.log(
    `A plank with ${silentSeconds} s of dead network: none, pieces that come later, pieces that never come.`,
  );
  printReport(reportPlanks(await runPlanks(plank, ["none", "held", "silent"])));
}

if (what === "takeover") await tryTakeoversHere("hall");
else if (what === "quick") await tryTakeoversHere("quick");
else if (what === "plank") await tryPlanksHere();
else await tryEntries();
console.log(`${wrong} wrong`);
process.exitCode = wrong === 0 ? 0 : 1;
