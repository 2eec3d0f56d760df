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

/** Returns the token of a `Cookie` header; null where there is none, or more than one. */
export function tokenIn(header: string | undefined): string | null {
  const values = (header ?? "")
    .split(";")
    .map((pair) => pair.trim())
    .filter((pair) => pair.startsWith(`${name}=`))
    .map((pair) => pair.slice(name.length + 1));
  const [value = ""] = values;
  return values.length === 1 && /^[\w-]{43}$/.test(value) ? value : null;
}
