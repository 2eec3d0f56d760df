import type { Caller } from "../../domain/lock/roles.ts";

/** The scheme of every page of the app. */
export const scheme = "app";

/**
 * The host of a page identifies its window: `app://desk` the laptop's, `app://board` the big screen's, `app://device` the
 * laptop's while it is a device of another laptop's table.
 */
export type Host = "desk" | "board" | "device";

/** What the laptop's one window shows: its own desk, or its place at another table. */
export type DeskHost = Exclude<Host, "board">;

export const hosts: readonly Host[] = ["desk", "board", "device"];

/**
 * Returns a window's caller, from its host and from nothing that its page sends. The desk's lock decides for the desk;
 * without a lock, as on a page without data, it is the organiser.
 */
export function whoOfHost(host: Host): () => Caller {
  return () => ({ role: host === "board" ? "board" : "organiser", station: null });
}

/** Returns the origin of a host's pages, in the form of `Origin` headers and CSP. */
export function originOf(host: Host): string {
  return `${scheme}://${host}`;
}

/** True if `url` is a page or file of `host`: exactly that host, with no port and no user. */
export function belongsTo(host: Host, url: string): boolean {
  if (!URL.canParse(url)) return false;
  const parsed = new URL(url);
  const bare = parsed.username === "" && parsed.password === "";
  // `host` and not `hostname`: a port makes it a different origin.
  return bare && parsed.protocol === `${scheme}:` && parsed.host === host;
}
