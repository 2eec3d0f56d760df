import { damaged } from "./damage.ts";
import { buildDisk, canMount } from "./disk.ts";
import { cutInCheckpoint } from "./mid-checkpoint.ts";
import {
  born,
  bornInNoRoom,
  cutInCheckpoints,
  cutOff,
  failing,
  filledUp,
  killed,
  startedFull,
  type Toll,
} from "./trials.ts";
import { damagedTwice } from "./twice-damaged.ts";

/**
 * `npm run plug`: the long form. 200 kills, 70 power cuts, 100 ends in checkpoints, failing syncs and writes, stores made while writes fail, full disks, 500
 * damaged stores, 300 with two files damaged, 300 left in the middle of a checkpoint. Ends with 0 when nothing that was
 * saved was lost, doubled or shown wrong, and the same cuts with `synchronous=NORMAL` were noticed. An argument multiplies
 * the counts: `npm run plug -- 0.1`.
 */
const share = Number(process.argv[2] ?? 1);
const count = (many: number) => Math.max(1, Math.round(many * share));
const seed = Date.now() % 1_000_000;
const library = buildDisk();
let failed = false;

function tell(what: string, toll: Toll, bad = toll.wrong.length > 0): void {
  failed ||= bad;
  const refused = [...toll.refused].map(([key, many]) => `${key} ${many}`).join(", ");
  const rest = refused === "" ? "" : `; refused: ${refused}`;
  console.log(`${bad ? "FAILED" : "kept"}  ${what}: ${toll.faults} faults, ${toll.saved} saved${rest}`);
  for (const each of toll.wrong.slice(0, 5)) console.log(`        ${each.split("\n")[0]}`);
}

console.log(`seed ${seed}`);
tell(`${count(200)} kills`, await killed(count(200), seed));
if (typeof library === "string") {
  tell(`${count(70)} power cuts`, await cutOff(library, count(70), seed));
  const normal = await cutOff(library, count(20), seed, "NORMAL");
  const noticed = new Set(normal.wrong.map((each) => each.split(":")[0])).size;
  tell(
    `with synchronous=NORMAL, ${count(20)} power cuts: noticed ${noticed} (it must be)`,
    normal,
    noticed === 0,
  );
  tell(`${count(100)} ends in checkpoints`, await cutInCheckpoints(library, count(100), seed));
  tell(`${count(20)} lives with failing syncs`, await failing(library, count(20), seed, "sync"));
  tell(`${count(20)} lives with failing writes`, await failing(library, count(20), seed, "write"));
  tell(`${count(60)} stores made while writes fail`, await born(library, count(60), seed));
} else {
  console.log(`skipped  power cuts and failing disks: ${library.why}`);
}
const mount = canMount();
if (mount === true) {
  // A new store takes more than 1,100,000 bytes while it is made: on less there is none yet, on more it is filled up.
  for (const bytes of [100_000, 300_000, 500_000, 600_000, 700_000, 800_000]) {
    tell(`a store made on a disk of ${bytes} bytes`, await bornInNoRoom(bytes, seed));
  }
  for (const bytes of [1_200_000, 1_500_000, 2_000_000]) {
    tell(`a disk of ${bytes} bytes filled to the last`, await filledUp(bytes, seed));
  }
  for (const ending of ["closed", "killed"] as const) {
    const { attempts, refused, entered, trouble } = startedFull(1_500_000, ending);
    const bad = attempts !== 30 || refused !== "disk.full" || entered !== 10;
    failed ||= bad;
    console.log(`${bad ? "FAILED" : "kept"}  a start on a full disk, after it was ${ending}: ${trouble}`);
  }
} else {
  console.log(`skipped  full disks: ${mount.why}`);
}
tellDamage(
  `${count(500)} damaged stores: the refused ones repaired from a backup`,
  await damaged(count(500), seed),
);
tellDamage(`${count(300)} stores with two files damaged`, damagedTwice(count(300), seed));
tellDamage(`${count(100)} stores ended in a checkpoint`, cutInCheckpoint(count(100), seed, false));
tellDamage(
  `${count(200)} stores ended in a checkpoint, and a bit flipped`,
  cutInCheckpoint(count(200), seed, true),
);
process.exitCode = failed ? 1 : 0;

interface DamageTold {
  readonly opened: number;
  readonly refused: Readonly<Record<string, number>>;
  readonly wrong: readonly string[];
}

function tellDamage(what: string, { opened, refused, wrong }: DamageTold): void {
  failed ||= wrong.length > 0;
  const reasons = Object.entries(refused).map(([reason, many]) => `${reason} ${many}`);
  console.log(`${wrong.length > 0 ? "FAILED" : "kept"}  ${what}: ${opened} opened as they were`);
  if (reasons.length > 0) console.log(`        the rest refused (${reasons.join(", ")})`);
  for (const each of wrong.slice(0, 10)) console.log(`        ${each}`);
}
