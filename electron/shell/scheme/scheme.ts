import { protocol, type Session, session } from "electron";
import type { Answer } from "./answer.ts";
import { type Host, scheme } from "./hosts.ts";

/** Registers the app's scheme with Chromium. Must be called before the app is ready, once. */
export function registerScheme(): void {
  const privileges = { standard: true, secure: true, supportFetchAPI: true, stream: true };
  protocol.registerSchemesAsPrivileged([{ scheme, privileges }]);
}

/**
 * Returns the session of a host's pages. Each host has its own, in memory: no storage or cache of a page reaches the
 * disk or another host. A device's alone is on the disk: what is entered there must outlast a power cut until the table
 * has it.
 */
export function sessionOf(host: Host): Session {
  return session.fromPartition(host === "device" ? "persist:device" : host);
}

/** Deletes all that pages of a device kept. */
export async function wipeDevice(): Promise<void> {
  await sessionOf("device").clearStorageData();
}

/** Serves a host's pages and data to its own session only, replacing the earlier answer. */
export function serveHost(host: Host, answer: Answer): void {
  const { protocol: own } = sessionOf(host);
  if (own.isProtocolHandled(scheme)) own.unhandle(scheme);
  own.handle(scheme, answer);
}
