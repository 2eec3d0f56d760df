import type { Handle } from "../../api/handler.ts";
import type { BuildFiles } from "./build-files.ts";
import { withSecurityHeaders } from "./headers.ts";
import { belongsTo, type Host, originOf, whoOfHost } from "./hosts.ts";

/** Answers some paths of a host in place of its files; null for a path that is not its. */
export type Beside = (path: string, request: Request) => Promise<Response | null>;

/** Answers a page's request. Never rejects. */
export type Answer = (request: Request) => Promise<Response>;

/**
 * Serves one host: its data at `/trpc`, the build's files elsewhere, and 404 for everything else. A host has a session
 * of its own that knows no other host, so a page can't reach across. Electron tells a scheme's handler neither the
 * asking page nor an Origin, so it could not be checked here.
 */
export function createAnswer(
  host: Host,
  files: BuildFiles,
  handle: Handle,
  who = whoOfHost(host),
  beside: Beside = async () => null,
): Answer {
  return guarded(host, async (request, path) => {
    const forData = path === "/trpc" || path.startsWith("/trpc/");
    if (!forData) return (await beside(path, request)) ?? serveFile(files, request, path);
    // Asked again for every request: a desk handed over a moment ago is the volunteer's.
    const { role, station } = who();
    return handle(request, role, station);
  });
}

/** Serves the pages of a device from the program's own package; `beside` has all that they ask of the table. */
export function createDeviceAnswer(files: BuildFiles, beside: Beside): Answer {
  return guarded(
    "device",
    async (request, path) => (await beside(path, request)) ?? serveFile(files, request, path),
  );
}

/** Wraps `inner` in the checks and headers shared by everything on a host; `path` is the URL's, undecoded. */
export function guarded(
  host: Host,
  inner: (request: Request, path: string) => Promise<Response> | Response,
): Answer {
  return async (request) => {
    const refusal = refuse(host, request);
    if (refusal !== undefined) return withSecurityHeaders(refusal);
    try {
      const answer = await inner(request, new URL(request.url).pathname);
      // A network's error has no headers, and no page sees more of it than that it failed.
      return answer.type === "error" ? answer : withSecurityHeaders(answer);
    } catch (error) {
      console.error(`${request.method} ${request.url} failed:`, error);
      return withSecurityHeaders(new Response(null, { status: 500 }));
    }
  };
}

function refuse(host: Host, request: Request): Response | undefined {
  if (!belongsTo(host, request.url)) return new Response(null, { status: 404 });
  const origin = request.headers.get("origin");
  // Electron 33 passes no Origin on; if one arrives, it must be the host's own.
  if (origin !== null && origin !== originOf(host)) return new Response(null, { status: 403 });
  return undefined;
}

async function serveFile(files: BuildFiles, request: Request, path: string): Promise<Response> {
  const file = files.get(path);
  if (file === undefined) return new Response(null, { status: 404 });
  if (request.method !== "GET") return new Response(null, { status: 405 });
  return new Response(await file.read(), { headers: { "content-type": file.contentType } });
}
