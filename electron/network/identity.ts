import {
  createHash,
  createPrivateKey,
  createPublicKey,
  generateKeyPairSync,
  type KeyObject,
} from "node:crypto";
import { isIPv4, isIPv6 } from "node:net";
import { inGroups } from "../domain/devices/codes.ts";
import { shortDigits } from "../domain/devices/invitation.ts";

/** Where the key of this table is kept from one run of the program to the next. */
export interface KeyKeep {
  /** The key as it was written last (PKCS #8, PEM); null when there is none. */
  read(): string | null;
  /** Writes the key so that this computer's user alone can read it, and syncs it. Throws when it can't. */
  write(pem: string): void;
}

/** What the server shows of itself: its key, and a certificate of that key for certain addresses. */
export interface Identity {
  readonly key: string;
  readonly certificate: string;
}

const dayMs = 86_400_000;
/** From the day before yesterday, because the clock of a phone or of this laptop may be set wrong by a day. */
const validFromMs = -2 * dayMs;
/** A season. Each time the switch is turned on there is a new certificate. */
const validToMs = 300 * dayMs;

/**
 * Returns the table's key, which stays the same all season so that a device can know the table again; makes it when there
 * is none or the stored one is no EC key of P-256.
 */
export function keyOf(keep: KeyKeep): KeyObject {
  const kept = readKey(keep.read());
  if (kept !== null) return kept;
  const { privateKey } = generateKeyPairSync("ec", { namedCurve: "P-256" });
  keep.write(pemOf(privateKey));
  return privateKey;
}

function readKey(pem: string | null): KeyObject | null {
  if (pem === null) return null;
  try {
    const key = createPrivateKey(pem);
    return key.asymmetricKeyDetails?.namedCurve === "prime256v1" ? key : null;
  } catch (error) {
    // People see it: the short form that they compare is another one from now on.
    console.error("The network's key can't be read, so a new one is made:", error);
    return null;
  }
}

function pemOf(key: KeyObject): string {
  return key.export({ type: "pkcs8", format: "pem" }).toString();
}

/** Makes a certificate of the key for these addresses (IPv4 or IPv6), signed by the key itself. */
export async function identityFor(
  key: KeyObject,
  addresses: readonly string[],
  now: Date,
): Promise<Identity> {
  const wrong = addresses.filter((address) => !isIPv4(address) && !isIPv6(address));
  if (wrong.length > 0) throw new Error(`${wrong.join(", ")} is no address`);
  // Loaded when the switch is turned on and not before: most starts never need it.
  const { generate } = await import("selfsigned");
  const privateKey = pemOf(key);
  const publicKey = createPublicKey(key).export({ type: "spki", format: "pem" }).toString();
  const { cert } = await generate([{ name: "commonName", value: "Tapeline" }], {
    keyType: "ec",
    curve: "P-256",
    algorithm: "sha256",
    keyPair: { privateKey, publicKey },
    notBeforeDate: new Date(now.getTime() + validFromMs),
    notAfterDate: new Date(now.getTime() + validToMs),
    extensions: [
      { name: "basicConstraints", cA: false, critical: true },
      { name: "keyUsage", digitalSignature: true, critical: true },
      { name: "extKeyUsage", serverAuth: true },
      { name: "subjectAltName", altNames: addresses.map((ip) => ({ type: 7 as const, ip })) },
    ],
  });
  return { key: privateKey, certificate: cert };
}

/**
 * Returns what people compare: the first 80 bits of the SHA-256 of the public key (SubjectPublicKeyInfo, RFC 5280 4.1), in
 * hexadecimal digits by fours. Browsers that show the hash of a certificate's public key show the same beginning.
 */
export function shortFormOf(key: KeyObject): string {
  const spki = createPublicKey(key).export({ type: "spki", format: "der" });
  const digits = createHash("sha256").update(spki).digest("hex");
  return inGroups(digits.slice(0, shortDigits), " ");
}
