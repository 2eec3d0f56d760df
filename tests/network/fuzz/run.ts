import { seeded } from "../../door/desk.ts";
import { connectionOf } from "../../store/connection.ts";
import { dial, joinAs, openTable, send, type Table } from "../table.ts";
import { type Made, makeRequest } from "./requests.ts";

/** What came of many requests. */
export interface Toll {
  /** Answers by status; "none" for a connection that ended or stayed silent. */
  readonly statuses: Map<string, number>;
  /** What must never be. */
  readonly wrong: string[];
}

/** How long an answer is waited for: what is incomplete gets none. */
const patienceMs = 400;
const atOnce = 24;
const tables = ["day", "athlete", "entrant", "attempt", "heat", "call", "device", "day_event"] as const;

/** Sends so many requests at random to a table with three devices, and looks at what came of them. */
export async function fuzzNetwork(count: number, seed: number): Promise<Toll> {
  const table = await openTable({
    bounds: { patience: { handshake: 5_000, headers: 2_000, request: 2_000, idle: 2_000 } },
  });
  const cookies = [
    "",
    "__Host-tapeline=x",
    await joinAs(table, { role: "station", test: "core" }, "Core"),
    await joinAs(table, { role: "check-in" }, "Check-in"),
    await joinAs(table, { role: "board" }, "Board"),
  ];
  table.network.closeJoining();
  const before = rowsOf(table);
  const chance = seeded(seed);
  const toll: Toll = { statuses: new Map(), wrong: [] };
  for (let done = 0; done < count; done += atOnce) {
    const made = Array.from({ length: Math.min(atOnce, count - done) }, () =>
      makeRequest(chance, table.origin, table.port, cookies),
    );
    await Promise.all(made.map((each) => tryOne(table, each, toll)));
  }
  await lookAfter(table, cookies, before, toll);
  await table.close();
  return toll;
}

async function tryOne(table: Table, made: Made, toll: Toll): Promise<void> {
  const raw = await dial(table);
  raw.socket.write(made.bytes);
  const silent = setTimeout(() => raw.socket.destroy(), patienceMs);
  raw.socket.on("data", () => silent.refresh());
  const came = await raw.ended;
  clearTimeout(silent);
  const statuses = [...came.matchAll(/^HTTP\/1\.1 (\d+)/gm)].map(([, status = ""]) => status);
  for (const status of statuses.length === 0 ? ["none"] : statuses) {
    toll.statuses.set(status, (toll.statuses.get(status) ?? 0) + 1);
    if (status.startsWith("5")) toll.wrong.push(`${status} for ${made.about}`);
  }
  if (/access-control|node_modules|\.ts:\d|SQLITE|\bat \w+ \(/i.test(came)) {
    toll.wrong.push(`told too much for ${made.about}: ${came.slice(0, 300)}`);
  }
  // Node's own refusals are bare; whatever we answer has the headers of the windows.
  if (
    statuses.length > 0 &&
    !/^content-security-policy: default-src 'none'/im.test(came) &&
    !came.includes(" 417 ")
  ) {
    toll.wrong.push(`no content policy for ${made.about}: ${came.slice(0, 300)}`);
  }
}

/** The table is as it was: nobody joined, nothing was entered, and the devices are served. */
async function lookAfter(
  table: Table,
  cookies: readonly string[],
  before: Record<string, number>,
  toll: Toll,
): Promise<void> {
  for (const fault of table.faults) toll.wrong.push(`a fault: ${fault}`);
  const after = rowsOf(table);
  if (JSON.stringify(after) !== JSON.stringify(before)) toll.wrong.push(`rows: ${JSON.stringify(after)}`);
  for (const cookie of cookies.slice(2)) {
    const { status } = await send(table, "/trpc/board.view", { cookie });
    if (status !== 200 && cookie !== "") toll.wrong.push(`${status} for a device that is still there`);
  }
}

function rowsOf({ desk }: Table): Record<string, number> {
  const db = connectionOf(desk.store.db);
  const count = (name: string) =>
    (db.prepare(`SELECT count(*) AS n FROM "${name}"`).get() as { n: number }).n;
  return Object.fromEntries(tables.map((name) => [name, count(name)]));
}
