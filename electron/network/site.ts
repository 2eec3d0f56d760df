import type { IncomingMessage, ServerResponse } from "node:http";
import { z } from "zod";
import { deviceNameSchema, type JoinedDevice } from "../domain/devices/place.ts";
import { allowKeeping } from "./caching.ts";
import { asDoorRequest, BrokenBody, jsonOf, sendAnswer } from "./carry.ts";
import { cookieGone, cookieWith, tokenOf } from "./cookie.ts";
import type { Devices } from "./devices.ts";
import { pathOf, refusalOf, type Served } from "./guard.ts";
import type { Joining } from "./joining.ts";

/** A file of the built pages. */
interface SiteFile {
  readonly contentType: string;
  read(): Promise<Uint8Array<ArrayBuffer>>;
}

/** What the server is given: the pages, the door, and the headers of every answer. */
export interface Carried {
  /** The files of the build by URL path. */
  readonly files: ReadonlyMap<string, SiteFile>;
  /** Answers a request for data with the rights of a device. */
  handle(request: Request, device: JoinedDevice): Promise<Response>;
  /** Adds the headers of every answer; returns the same answer. */
  withHeaders(answer: Response): Response;
  /** Receives faults that no request caused. */
  report(error: unknown): void;
}

interface SiteParts extends Carried {
  readonly served: Served;
  readonly joining: Joining;
  readonly devices: Devices;
  /** False where the device has too many connections. */
  known(request: IncomingMessage, deviceId: string): boolean;
  /** Called after what the table's screen shows. */
  changed(): void;
  /** Called when the holder of a token that was let go has said that it heard so. */
  heardOver(token: string): void;
}

/** A body of which the rest is not worth a connection, in bytes. */
const shortBytes = 64 * 1024;
/** The page of a device that has not joined. */
const joinPage = "/join.html";
const doorPath = /^\/trpc\/[a-z]+(?:\.[a-z]+)*(?:(?:,|%2c)[a-z]+(?:\.[a-z]+)*)*$/i;

const askSchema = z.strictObject({ code: z.string().max(40), name: deviceNameSchema });
const waitSchema = z.strictObject({ ask: z.string().max(64) });
const hereSchema = z.strictObject({
  waiting: z.int().min(0).max(1_000_000),
  battery: z.int().min(0).max(100).nullable(),
  compared: z.string().max(100).nullable().default(null),
});
const nothingSchema = z.strictObject({});

/** Makes the function that answers every request from the network. It never rejects. */
export function createSite(
  parts: SiteParts,
): (request: IncomingMessage, response: ServerResponse) => Promise<void> {
  const { served, joining, devices, known, changed } = parts;

  function askToJoin(input: z.infer<typeof askSchema>): Response {
    if (!devices.hasRoom()) return told(503, { outcome: "full" });
    const asked = joining.ask(input.code, input.name);
    return told(asked.outcome === "asked" ? 200 : asked.outcome === "shut" ? 429 : 403, asked);
  }

  function hearAnswer({ ask }: z.infer<typeof waitSchema>): Response {
    const heard = joining.hear(ask);
    if (heard.state !== "yes") return told(200, { state: heard.state });
    const { id, name, place } = heard;
    const answer = told(200, { state: "yes", place });
    answer.headers.set("set-cookie", cookieWith(devices.take({ id, name, place })));
    changed();
    return answer;
  }

  function here(device: JoinedDevice, word: z.infer<typeof hereSchema>): Response {
    devices.heard(device.id, word);
    const { name, place } = device;
    return told(200, { name, place, day: devices.day(), asOf: devices.asOf() });
  }

  /** Only a device that the table let go hears so, and deletes what it keeps. */
  function unknown(request: IncomingMessage): Response {
    const why = devices.whyGone(tokenOf(request.headers));
    return why === null ? bare(401) : told(410, { why });
  }

  /** It listens no longer than until every device that was there has said so. */
  async function heard(request: IncomingMessage): Promise<Response> {
    const token = tokenOf(request.headers);
    if (token === null || devices.whyGone(token) === null) return bare(401);
    nothingSchema.parse(await jsonOf(request));
    parts.heardOver(token);
    return told(200, {});
  }

  function leave(device: JoinedDevice): Response {
    devices.leave(device.id);
    changed();
    const answer = told(200, {});
    answer.headers.set("set-cookie", cookieGone);
    return answer;
  }

  /** What a device sends beside the door: joining, being there, leaving. */
  async function write(request: IncomingMessage, path: string, device: JoinedDevice | null) {
    if (path === "/join/ask") return askToJoin(askSchema.parse(await jsonOf(request)));
    if (path === "/join/wait") return hearAnswer(waitSchema.parse(await jsonOf(request)));
    if (path === "/device/heard") return heard(request);
    if (path !== "/device/here" && path !== "/device/leave") return bare(404);
    if (device === null) return unknown(request);
    if (path === "/device/here") return here(device, hereSchema.parse(await jsonOf(request)));
    nothingSchema.parse(await jsonOf(request));
    return leave(device);
  }

  async function page(path: string, device: JoinedDevice | null): Promise<Response> {
    const wanted = path === "/" ? (device === null ? joinPage : "/index.html") : path;
    const file = mayServe(wanted) ? parts.files.get(wanted) : undefined;
    if (file === undefined) return bare(404);
    return new Response(await file.read(), { headers: { "content-type": file.contentType } });
  }

  async function answer(request: IncomingMessage, signal: AbortSignal): Promise<Response> {
    const refused = refusalOf(request, served);
    if (refused !== null) return bare(refused);
    const path = pathOf(request.url ?? "");
    const device = devices.holderOf(tokenOf(request.headers));
    if (device !== null) {
      joining.arrived(device.id);
      if (!known(request, device.id)) return bare(429);
    }
    if (!path.startsWith("/trpc")) {
      return request.method === "GET" ? page(path, device) : write(request, path, device);
    }
    if (!doorPath.test(path)) return bare(404);
    if (device === null) return bare(401);
    return parts.handle(asDoorRequest(request, served.origin, signal), device);
  }

  return async (request, response) => {
    const gone = new AbortController();
    response.on("close", () => gone.abort());
    const told = await answer(request, gone.signal).catch((error: unknown) =>
      refusedFor(error, parts.report),
    );
    const sent = allowKeeping(pathOf(request.url ?? ""), parts.withHeaders(told));
    // A short rest of a refused body is read and dropped; a long one, or one of unknown length, ends the connection.
    const ends = !request.complete && !isShort(request);
    if (ends) sent.headers.set("connection", "close");
    await sendAnswer(response, sent);
    if (ends) request.destroy();
  };
}

function isShort({ headers }: IncomingMessage): boolean {
  return headers["transfer-encoding"] === undefined && Number(headers["content-length"] ?? 0) <= shortBytes;
}

/** Pages and what they load; never the map from the built code to its sources, which nobody at a station needs. */
function mayServe(path: string): boolean {
  return !path.endsWith(".map");
}

function refusedFor(error: unknown, report: (error: unknown) => void): Response {
  if (error instanceof z.ZodError) return bare(400);
  if (error instanceof BrokenBody) return bare(error.message === "too long" ? 413 : 400);
  report(error);
  return bare(500);
}

/** An answer without words: whoever gets it has no page of ours. */
function bare(status: number): Response {
  return new Response(null, { status });
}

function told(status: number, body: object): Response {
  return Response.json(body, { status });
}
