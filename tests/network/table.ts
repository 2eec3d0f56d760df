import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { request as httpsRequest, type RequestOptions } from "node:https";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { connect, type TLSSocket } from "node:tls";
import { callerAt, type DevicePlace } from "../../electron/domain/devices/place.ts";
import type { NetworkKeep } from "../../electron/network/kept.ts";
import type { Network, NetworkParts } from "../../electron/network/network.ts";
import { listBuildFiles } from "../../electron/shell/scheme/build-files.ts";
import { withSecurityHeaders } from "../../electron/shell/scheme/headers.ts";
import { type TestClock, type TestDesk, testClock, testDesk } from "../door/desk.ts";
import { networkInMemory } from "./in-memory.ts";

export const address = "127.0.0.1";

/** A table with its switch on, on real sockets of this machine. */
export interface Table extends TestDesk {
  readonly network: Network;
  readonly port: number;
  readonly origin: string;
  close(): Promise<void>;
}

interface TableParts {
  readonly file?: string;
  readonly clock?: TestClock;
  readonly keep?: NetworkKeep;
  readonly bounds?: Pick<NetworkParts, "limits" | "patience">;
  /** Leaves the switch off. */
  readonly off?: boolean;
}

/** A port that nobody listens on at this moment. */
export async function freePort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((resolve) => server.listen(0, address, resolve));
  const { port } = server.address() as { port: number };
  await new Promise((resolve) => server.close(resolve));
  return port;
}

/** Lays out the files of a small build. */
function builtPages(): string {
  const folder = mkdtempSync(join(tmpdir(), "tapeline-pages-"));
  mkdirSync(join(folder, "assets"));
  for (const [name, text] of [
    ["index.html", "<!doctype html><title>the desk</title>"],
    ["join.html", "<!doctype html><title>join</title>"],
    ["assets/boot-1a2b3c4d.js", "export {};"],
    ["assets/boot-1a2b3c4d.js.map", "{}"],
  ] as const) {
    writeFileSync(join(folder, name), text);
  }
  return folder;
}

export async function openTable(parts: TableParts = {}): Promise<Table> {
  const { keep = networkInMemory(), bounds, file, clock = testClock() } = parts;
  const more = { network: keep, ...(bounds !== undefined && { networkBounds: bounds }) };
  const table = testDesk(file, clock, more);
  const { network } = table.desk;
  if (network === null) throw new Error("The desk has no network.");
  const folder = builtPages();
  network.carry({
    files: await listBuildFiles(folder),
    handle(request, device) {
      const { role, station } = callerAt(device.place);
      return table.handle(request, role, station, device);
    },
    withHeaders: withSecurityHeaders,
    report: (error) => table.faults.push(error),
  });
  const port = await freePort();
  if (parts.off !== true) {
    await holdDay(table);
    await network.turnOn(address, port);
  }
  return {
    ...table,
    network,
    port,
    origin: `https://${address}:${port}`,
    async close() {
      await network.stop();
      table.desk.close();
      rmSync(folder, { recursive: true });
    },
  };
}

/** Plans and opens a day. */
export async function holdDay({ as }: TestDesk): Promise<number> {
  const organiser = as("organiser");
  const { dayId } = await organiser.day.create({ date: "2026-11-14", title: "Autumn" });
  await organiser.day.open();
  return dayId;
}

export interface Answered {
  readonly status: number;
  readonly headers: Record<string, string | string[] | undefined>;
  readonly text: string;
}

interface Sent {
  readonly method?: string;
  readonly headers?: Record<string, string>;
  readonly body?: string;
  readonly cookie?: string;
  /** For many requests in one connection. */
  readonly agent?: RequestOptions["agent"];
  /** Another address of this machine, as if it were another device. */
  readonly from?: string;
}

/** Where a table is reached. */
export type Reached = Pick<Table, "port" | "origin">;

/** Sends a request over a real connection. POST has the headers of our own pages, unless others are given. */
export function send(table: Reached, path: string, sent: Sent = {}): Promise<Answered> {
  const { method = sent.body === undefined ? "GET" : "POST", body, cookie, agent } = sent;
  const own = method === "POST" ? { origin: table.origin, "content-type": "application/json" } : {};
  const headers = { ...own, ...(cookie !== undefined && { cookie }), ...sent.headers };
  return new Promise((resolve, reject) => {
    const request = httpsRequest(
      {
        host: address,
        port: table.port,
        path,
        method,
        headers,
        rejectUnauthorized: false,
        agent: agent ?? false,
        ...(sent.from !== undefined && { localAddress: sent.from }),
      },
      (response) => {
        let text = "";
        response.setEncoding("utf8");
        response.on("data", (part: string) => {
          text += part;
        });
        response.on("end", () =>
          resolve({ status: response.statusCode ?? 0, headers: response.headers, text }),
        );
        response.on("error", reject);
      },
    );
    request.on("error", (error: NodeJS.ErrnoException) => {
      // The table may have ended a connection at the moment at which it was used again: browsers, too, ask anew then.
      const isOver = request.reusedSocket && error.code === "ECONNRESET";
      if (isOver) send(table, path, sent).then(resolve, reject);
      else reject(error);
    });
    request.end(body);
  });
}

export function post(table: Reached, path: string, body: unknown, sent: Sent = {}): Promise<Answered> {
  return send(table, path, { ...sent, body: JSON.stringify(body) });
}

/** The code that the table shows, as somebody types it. */
export function codeOf({ network }: Table): string {
  return network.view().code?.code ?? "";
}

/** Lets a device join and returns the cookie that it holds from now on. */
export async function joinAs(table: Table, place: DevicePlace, name = "Red tablet"): Promise<string> {
  if (table.network.view().code === null) table.network.openJoining();
  const asked = await post(table, "/join/ask", { code: codeOf(table), name });
  const { ask } = JSON.parse(asked.text) as { ask: string };
  const waiting = table.network.view().asking.find((each) => each.name === name);
  table.network.answer(waiting?.id ?? "", place);
  return cookieOf(await post(table, "/join/wait", { ask }));
}

/** The cookie of an answer, as a browser sends it back. */
export function cookieOf({ headers }: Answered): string {
  return String(headers["set-cookie"]).split(";", 1)[0] ?? "";
}

/** Opens a connection by hand, and collects what comes. */
export async function dial(
  table: Table,
): Promise<{ socket: TLSSocket; came: () => string; ended: Promise<string> }> {
  const socket = connect({ host: address, port: table.port, rejectUnauthorized: false });
  let text = "";
  socket.setEncoding("utf8").on("data", (part: string) => {
    text += part;
  });
  socket.on("error", () => undefined);
  const ended = new Promise<string>((resolve) => socket.on("close", () => resolve(text)));
  await new Promise<void>((resolve) => {
    socket.once("secureConnect", resolve);
    socket.once("close", () => resolve());
  });
  return { socket, came: () => text, ended };
}
