import { z } from "zod";
import { codeBytes, inGroups, readCode } from "./codes.ts";

/** The port that a table offers first; the second of the ports that people know from web servers with TLS. */
export const usualPort = 8443;

/** Digits of the short form of the table's key, in hexadecimal: 80 bits, so that a key with the same ones takes 2^80 tries. */
export const shortDigits = 20;

const codeLength = (codeBytes * 8) / 5;

/** What a laptop with the program needs to join a table, as somebody typed it from the table's screen. */
export interface TypedInvitation {
  readonly address: string;
  readonly code: string;
  /** The digits with which the table's key begins. */
  readonly key: string;
}

/** The same, read: where the table is, the joining code, and how the SHA-256 of its public key begins. */
export interface Invitation {
  /** IPv4 or IPv6: names are not looked up. */
  readonly address: string;
  readonly port: number;
  readonly code: string;
  /** 20 hexadecimal digits, in lower case. */
  readonly key: string;
}

const addressSchema = z.union([z.ipv4(), z.ipv6()]);

/** Reads what somebody typed; returns the first part that can't be right where there is one. */
export function readInvitation(
  typed: TypedInvitation,
): Invitation | { readonly wrong: keyof TypedInvitation } {
  const place = readAddress(typed.address);
  if (place === null) return { wrong: "address" };
  const code = readCode(typed.code);
  if (code.length !== codeLength) return { wrong: "code" };
  const key = readKey(typed.key);
  if (key === null) return { wrong: "key" };
  return { ...place, code, key };
}

/** Reads `192.0.2.7`, `192.0.2.7:8443`, `[2001:db8::7]:8443` or the address of a page; null for anything else. */
function readAddress(typed: string): Pick<Invitation, "address" | "port"> | null {
  const bare = typed
    .trim()
    .replace(/^https:\/\//i, "")
    .replace(/\/$/, "");
  const [, inBrackets, plain, port] = /^(?:\[([^\]]+)\]|([^:]+))(?::(\d{1,5}))?$/.exec(bare) ?? [];
  const address = addressSchema.safeParse(inBrackets ?? plain ?? bare);
  const number = Number(port ?? usualPort);
  if (!address.success || number < 1 || number > 65_535) return null;
  return { address: address.data, port: number };
}

/** Reads the digits of a key; a letter that is no hexadecimal digit but looks like one counts as that. */
function readKey(typed: string): string | null {
  const key = readCode(typed).toLowerCase();
  return /^[0-9a-f]+$/.test(key) && key.length === shortDigits ? key : null;
}

/** Takes a pasted line apart, for the three fields of a form; null for a text that is no whole invitation. */
export function splitInvitation(pasted: string): TypedInvitation | null {
  const [, address = "", rest = ""] = /^(\S+?)(?:#|\s+)([0-9A-Za-z\s-]+)$/.exec(pasted.trim()) ?? [];
  const symbols = rest.replaceAll(/[\s-]/g, "");
  if (symbols.length !== codeLength + shortDigits) return null;
  return {
    address,
    code: inGroups(symbols.slice(0, codeLength), " "),
    key: inGroups(symbols.slice(codeLength), " "),
  };
}
