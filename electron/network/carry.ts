import { once } from "node:events";
import type { IncomingMessage, ServerResponse } from "node:http";
import { mostBodyBytes } from "./guard.ts";

/** Longest time that a device may take nothing of an answer that waits for it, in ms. */
const patienceMs = 30_000;

/** A request's body was longer than allowed, or broke off. */
export class BrokenBody extends Error {}

/** The headers of a page's request that the door reads; no others go on. */
export const doorHeaders = ["accept", "content-type", "last-event-id", "trpc-accept"];

/** Yields a body, and breaks off where it is longer than `most` bytes. */
async function* bodyOf(message: IncomingMessage, most = mostBodyBytes): AsyncGenerator<Uint8Array> {
  let length = 0;
  for await (const part of message as AsyncIterable<Uint8Array>) {
    length += part.length;
    if (length > most) throw new BrokenBody("too long");
    yield part;
  }
}

/** Reads a body as text. @throws BrokenBody for one that is longer than `most` bytes */
export async function textOf(message: IncomingMessage, most?: number): Promise<string> {
  const parts: Uint8Array[] = [];
  for await (const part of bodyOf(message, most)) parts.push(part);
  return Buffer.concat(parts).toString("utf8");
}

/** Reads a request's body as JSON. @throws BrokenBody for one that is too long or no JSON */
export async function jsonOf(request: IncomingMessage): Promise<unknown> {
  try {
    return JSON.parse(await textOf(request)) as unknown;
  } catch (cause) {
    // Too long, no JSON, or gone in the middle.
    throw cause instanceof BrokenBody ? cause : new BrokenBody("unreadable", { cause });
  }
}

/**
 * Returns a request as the door takes it. Of its headers only those go on that the door reads: no cookie, so that no
 * procedure can see a token. `signal` is aborted when the device is gone.
 */
export function asDoorRequest(request: IncomingMessage, origin: string, signal: AbortSignal): Request {
  const headers = new Headers();
  for (const name of doorHeaders) {
    const value = request.headers[name];
    if (typeof value === "string") headers.set(name, value);
  }
  const { method = "GET" } = request;
  const body = method === "POST" ? ReadableStream.from(bodyOf(request)) : null;
  return new Request(`${origin}${request.url}`, {
    ...{ method, headers, signal, body },
    ...(body !== null && { duplex: "half" as const }),
  });
}

/** Sends an answer as the device takes it, and ends the connection of one that takes nothing for too long. */
export async function sendAnswer(response: ServerResponse, answer: Response): Promise<void> {
  response.writeHead(answer.status, Object.fromEntries(answer.headers));
  // At once, and not with the first event of a stream: the device sees that it is heard.
  if (answer.headers.get("content-type") === "text/event-stream") response.flushHeaders();
  try {
    for await (const part of answer.body ?? []) {
      if (response.destroyed) return;
      if (!response.write(part)) await once(response, "drain", { signal: AbortSignal.timeout(patienceMs) });
    }
    await new Promise<void>((resolve) => response.end(resolve));
  } catch {
    // Gone, or too slow: there is nobody to tell.
    response.destroy();
  }
}
