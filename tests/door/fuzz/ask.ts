import { appRouter } from "../../../electron/api/router.ts";
import type { Caller, Role } from "../../../electron/domain/lock/roles.ts";
import english from "../../../resources/locales/en/sentences.json" with { type: "json" };
import type { FuzzHall } from "./hall.ts";

export interface Procedure {
  readonly path: string;
  readonly type: "query" | "mutation" | "subscription";
  readonly inputs: readonly unknown[];
}

type Defined = { readonly _def: Omit<Procedure, "path"> };

/** Every procedure of the door, with what it parses its input by. */
export const procedures: readonly Procedure[] = Object.entries(
  appRouter._def.procedures as unknown as Record<string, Defined>,
).map(([path, { _def }]) => ({ path, type: _def.type, inputs: _def.inputs }));

/** What came back: a result, or a refusal with its sentence's key; `wrong` where it is neither. */
export interface Answer {
  readonly status: number;
  readonly result?: unknown;
  readonly key?: string;
  readonly wrong?: string;
}

export interface Asked {
  readonly path: string;
  readonly type: Procedure["type"];
  /** What the input is as JSON; undefined: none at all. */
  readonly json: string | undefined;
  readonly who: Role;
  readonly station?: Caller["station"];
}

/** Asks as a window does: queries and streams by GET, changes by POST. */
export async function ask({ handle }: FuzzHall, asked: Asked): Promise<Answer> {
  const { path, type, json, who, station = null } = asked;
  const url = `http://desk/trpc/${path}`;
  const query = json === undefined ? url : `${url}?input=${encodeURIComponent(json)}`;
  if (type === "subscription") return listen(handle, new Request(query), who, station);
  const headers = { "content-type": "application/json" };
  const init = { method: "POST", headers, ...(json !== undefined && { body: json }) };
  const request = type === "query" ? new Request(query) : new Request(url, init);
  return read(await handle(request, who, station));
}

/** Brings bytes, as a window does with a sheet or a bundle. */
export async function bring(
  { handle }: FuzzHall,
  path: string,
  bytes: Uint8Array,
  who: Role,
): Promise<Answer> {
  const headers = { "content-type": "application/octet-stream" };
  const body = new Blob([new Uint8Array(bytes)]).stream();
  const init = { method: "POST", headers, body, duplex: "half" };
  return read(await handle(new Request(`http://desk/trpc/${path}`, init), who));
}

export async function read(response: Response): Promise<Answer> {
  const { status } = response;
  const text = await response.text();
  try {
    return { status, ...answerOf(JSON.parse(text)) };
  } catch {
    return { status, wrong: `an answer that is no JSON: ${text.slice(0, 200)}` };
  }
}

/** The answer in what came over the wire; every error must have a sentence that the desk can say. */
export function answerOf(body: unknown): Omit<Answer, "status"> {
  const { result, error } = (body ?? {}) as { result?: { data?: unknown }; error?: unknown };
  if (result !== undefined) return { result: result.data };
  return refusalIn(error);
}

function refusalIn(error: unknown): Omit<Answer, "status"> {
  const key = (error as { data?: { sentence?: { key?: unknown } } } | undefined)?.data?.sentence?.key;
  if (typeof key !== "string") return { wrong: `an error without a sentence: ${JSON.stringify(error)}` };
  if (key === "door.failed") return { key, wrong: "door.failed, a sentence for faults of the program" };
  if (!isSaid(key)) return { key, wrong: `a sentence that nobody can say: ${key}` };
  return { key };
}

function isSaid(key: string): boolean {
  let at: unknown = english;
  const [last = "", ...before] = key.split(".").reverse();
  for (const part of before.reverse()) at = (at as Record<string, unknown> | undefined)?.[part];
  const texts = (at ?? {}) as Record<string, unknown>;
  // Sentences with a count stand under their plural forms.
  return [last, `${last}_other`].some((name) => name in texts);
}

type Handle = FuzzHall["handle"];

/** Reads a stream to its end; one that never ends (the change feed) to its first word. */
async function listen(
  handle: Handle,
  request: Request,
  who: Role,
  station: Caller["station"],
): Promise<Answer> {
  const stop = new AbortController();
  request.headers.set("accept", "text/event-stream");
  const response = await handle(new Request(request, { signal: stop.signal }), who, station);
  const { status } = response;
  if (!(response.headers.get("content-type") ?? "").startsWith("text/event-stream")) return read(response);
  const endless = request.url.includes("/changes");
  let text = "";
  const decoder = new TextDecoder();
  for await (const chunk of response.body ?? []) {
    text += decoder.decode(chunk, { stream: true });
    if (/^event: (?:serialized-error|return)$[\s\S]*\n\n/m.test(text)) break;
    if (endless && /^id: /m.test(text)) break;
  }
  stop.abort();
  const lines = text.split("\n");
  const failed = lines[lines.indexOf("event: serialized-error") + 1];
  if (!lines.includes("event: serialized-error")) return { status, result: lastData(lines) };
  return { status, ...answerOf({ error: JSON.parse(failed?.replace(/^data: /, "") ?? "null") }) };
}

/** The last thing that was told. Lines end with LF alone here: JSON may hold signs that others take for line ends. */
function lastData(lines: readonly string[]): unknown {
  const told = lines.flatMap((line) => (line.startsWith("data: ") ? [line.slice(6)] : []));
  return told
    .filter((data) => data !== "")
    .map((data) => JSON.parse(data) as unknown)
    .at(-1);
}
