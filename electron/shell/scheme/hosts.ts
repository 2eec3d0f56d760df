import type { Caller } from "../../domain/lock/roles.ts";

/** The scheme of every page of the app. */
export const scheme = "app";

/** The host of a page says which window it is: `app://desk` the laptop's, `app://board` the hall's. */
export type Host = "desk" | "board";

/**
 * Who a window is, from its host and from nothing that its page sends. The desk's is whom the desk's lock says; where
 * there is no lock, as on a page without data, the organiser.
 */
export function whoOfHost(host: Host): () => Caller {
  return () => ({ role: host === "board" ? "board" : "organiser", station: null });
}

/** The origin of a host's pages, as `Origin` headers and CSP write it. */
export function originOf(host: Host): string {
  return `${scheme}://${host}`;
}

/** Whether `url` is a page or file of `host`: exactly that host, with no port and no user. */
export function belongsTo(host: Host, url: string): boolean {
  if (!URL.canParse(url)) return false;
  const parsed = new URL(url);
  const bare = parsed.username === "" && parsed.password === "";
  // `host` and not `hostname`: a port makes it another place.
  return bare && parsed.protocol === `${scheme}:` && parsed.host === host;
}
