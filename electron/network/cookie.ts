import type { IncomingHttpHeaders } from "node:http";

/**
 * The cookie with a browser's token. `__Host-` (RFC 6265bis 4.1.3.2): only over TLS, for this host alone and its whole
 * site, so that nothing else on the network can set one.
 */
const name = "__Host-tapeline";
const attributes = "Path=/; Secure; HttpOnly; SameSite=Strict";

/** A day is over by then, whatever happens to the table. */
const lastsSeconds = 86_400;

/** Returns the `Set-Cookie` header that gives a browser its token. */
export function cookieWith(token: string): string {
  return `${name}=${token}; ${attributes}; Max-Age=${lastsSeconds}`;
}

/** Returns the `Set-Cookie` header that takes the token away. */
export const cookieGone = `${name}=; ${attributes}; Max-Age=0`;

type Shown = Pick<IncomingHttpHeaders, "cookie" | "authorization">;

/**
 * Returns the token that a request shows: a browser in its cookie, our own program as a bearer (RFC 6750 2.1). Null where
 * there is none, or more than one.
 */
export function tokenOf({ cookie, authorization }: Shown): string | null {
  if (authorization === undefined) return tokenIn(cookie);
  const [, token = null] = /^Bearer ([\w-]{43})$/.exec(authorization) ?? [];
  return cookie === undefined ? token : null;
}

/** Returns the token of a `Cookie` header, or of the cookie that an answer sets. */
export function tokenIn(header: string | undefined): string | null {
  const values = (header ?? "")
    .split(";")
    .map((pair) => pair.trim())
    .filter((pair) => pair.startsWith(`${name}=`))
    .map((pair) => pair.slice(name.length + 1));
  const [value = ""] = values;
  return values.length === 1 && /^[\w-]{43}$/.test(value) ? value : null;
}
