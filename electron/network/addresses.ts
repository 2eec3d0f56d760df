import { isIPv4 } from "node:net";
import { networkInterfaces } from "node:os";

/** An address of this computer in a network: what the system calls its way there, and the address. */
export interface OwnAddress {
  readonly way: string;
  readonly address: string;
}

/** True for an address that is only good on one wire and needs the name of it, as no browser takes it. */
function needsZone(address: string): boolean {
  return /^fe[89ab]/i.test(address);
}

/** Returns the addresses at which other devices may reach this computer, IPv4 first; none without a network. */
export function addressesHere(): OwnAddress[] {
  return ownAddresses(false);
}

/** True if this computer has the address now. Its address for itself (127.0.0.1) counts: nobody else reaches that. */
export function isOwnAddress(address: string): boolean {
  return ownAddresses(true).some((own) => own.address === address);
}

function ownAddresses(withInternal: boolean): OwnAddress[] {
  const found = Object.entries(networkInterfaces()).flatMap(([way, infos = []]) =>
    infos
      .filter(({ address, internal }) => (withInternal || !internal) && !needsZone(address))
      .map(({ address }) => ({ way, address })),
  );
  return found.sort((a, b) => Number(isIPv4(b.address)) - Number(isIPv4(a.address)));
}

/** Returns an address and a port as a URL's host has them (RFC 3986 3.2.2); 443 is left out, as browsers do. */
export function hostOf(address: string, port: number): string {
  const host = isIPv4(address) ? address : `[${address}]`;
  return port === 443 ? host : `${host}:${port}`;
}
