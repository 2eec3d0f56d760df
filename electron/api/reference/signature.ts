import {
  createHash,
  createPrivateKey,
  createPublicKey,
  generateKeyPairSync,
  type KeyObject,
  sign,
  verify,
} from "node:crypto";
import { z } from "zod";
import { parseJson } from "../../domain/reference/json.ts";
import { refused, unreadable } from "../../domain/reference/refused.ts";
import { tableFiles } from "../../domain/reference-table/descriptor.ts";
import { sentence } from "../../domain/words.ts";

/** What is signed begins with it, so that no signature of anything else by that key can pass for one of a table. */
const purpose = new TextEncoder().encode("tapeline reference table\n");

function signed(descriptor: Uint8Array): Uint8Array {
  return Buffer.concat([purpose, descriptor]);
}

/** Makes a publisher's private key (Ed25519), as PEM (PKCS #8). */
export function newKey(): string {
  return generateKeyPairSync("ed25519").privateKey.export({ type: "pkcs8", format: "pem" }).toString();
}

/** Reads a private key from its PEM; undefined when it is no Ed25519 key. */
export function readKey(pem: string): KeyObject | undefined {
  try {
    const key = createPrivateKey(pem);
    return key.asymmetricKeyType === "ed25519" ? key : undefined;
  } catch {
    return undefined;
  }
}

/** Returns the public half (32 bytes, base64url). */
export function publicKeyOf(key: KeyObject): string {
  return createPublicKey(key).export({ format: "jwk" }).x ?? "";
}

/** Returns a key in the short form that people compare: five groups of four of the digits of its SHA-256 (80 bits). */
export function shortKey(publicKey: string): string {
  const digits = createHash("sha256").update(Buffer.from(publicKey, "base64url")).digest("hex").slice(0, 20);
  return (digits.match(/.{4}/g) ?? []).join(" ");
}

/**
 * Makes signature.json: by Ed25519 (RFC 8032) over the descriptor, which holds the hashes of all other files and the
 * publisher's name and key.
 */
export function signatureFile(descriptor: Uint8Array, key: KeyObject): string {
  const signature = sign(null, signed(descriptor), key).toString("base64url");
  return `${JSON.stringify({ algorithm: "Ed25519", signs: tableFiles.descriptor, signature }, null, 2)}\n`;
}

const schema = z.object({
  algorithm: z.literal("Ed25519"),
  signs: z.literal(tableFiles.descriptor),
  signature: z.string().regex(/^[\w-]{86}$/),
});

/**
 * Checks that the descriptor was signed by the key that it names.
 * @throws Refusal `bad-input`
 */
export function requireSigned(descriptor: Uint8Array, publicKey: string, file: string): void {
  const { data } = schema.safeParse(parseJson(tableFiles.signature, file));
  if (data === undefined) throw unreadable(tableFiles.signature);
  if (!isSignedBy(publicKey, descriptor, data.signature)) throw refused(sentence("referenceTable.signature"));
}

function isSignedBy(publicKey: string, descriptor: Uint8Array, signature: string): boolean {
  const jwk = { kty: "OKP", crv: "Ed25519", x: publicKey };
  try {
    const key = createPublicKey({ key: jwk, format: "jwk" });
    return verify(null, signed(descriptor), key, Buffer.from(signature, "base64url"));
  } catch {
    // No point on the curve: nobody can have signed with it.
    return false;
  }
}
