import { spawnSync } from "node:child_process";
import { createHash, createPublicKey, X509Certificate } from "node:crypto";
import { mkdtempSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { networkFiles } from "../../electron/host/network-files.ts";
import { identityFor, keyOf, shortFormOf } from "../../electron/network/identity.ts";

let folder = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "tapeline-identity-"));
});
afterEach(() => rmSync(folder, { recursive: true }));

const now = new Date("2026-11-14T09:00:00Z");

test("the key lies beside the store for this computer's user alone, and is the same the next time", () => {
  const { key: keep } = networkFiles(folder);
  const first = keyOf(keep);
  expect(statSync(join(folder, "network-key.pem")).mode & 0o777).toBe(0o600);
  expect(first.asymmetricKeyDetails?.namedCurve).toBe("prime256v1");
  expect(shortFormOf(keyOf(networkFiles(folder).key))).toBe(shortFormOf(first));
});

test("a key that can't be read is made anew", () => {
  const { key: keep } = networkFiles(folder);
  const first = shortFormOf(keyOf(keep));
  writeFileSync(join(folder, "network-key.pem"), "no key");
  const second = shortFormOf(keyOf(keep));
  expect(second).not.toBe(first);
  expect(shortFormOf(keyOf(keep))).toBe(second);
});

test("a certificate is signed by its own key, for exactly the addresses, and not for much longer than a season", async () => {
  const key = keyOf(networkFiles(folder).key);
  const identity = await identityFor(key, ["192.0.2.7", "2001:db8::7"], now);
  const certificate = new X509Certificate(identity.certificate);
  // RFC 5280 4.2.1.6: a browser looks for an address among the alternative names, and nowhere else.
  expect(certificate.subjectAltName).toBe("IP Address:192.0.2.7, IP Address:2001:DB8:0:0:0:0:0:7");
  expect(certificate.checkIP("192.0.2.7")).toBe("192.0.2.7");
  expect(certificate.checkIP("192.0.2.8")).toBeUndefined();
  expect(certificate.verify(createPublicKey(key))).toBe(true);
  expect(certificate.ca).toBe(false);
  expect(certificate.validFromDate < now).toBe(true);
  // 398 days: the most that browsers take (CA/Browser Forum, Baseline Requirements 6.3.2, as of 2020).
  const days = (certificate.validToDate.getTime() - certificate.validFromDate.getTime()) / 86_400_000;
  expect(days).toBeLessThan(398);
  expect(days).toBeGreaterThan(200);
});

test("new addresses get another certificate of the same key", async () => {
  const key = keyOf(networkFiles(folder).key);
  const [one, other] = await Promise.all(
    ["192.0.2.7", "198.51.100.4"].map(async (address) => {
      const { certificate } = await identityFor(key, [address], now);
      return new X509Certificate(certificate);
    }),
  );
  expect(one?.serialNumber).not.toBe(other?.serialNumber);
  expect(one?.publicKey.equals(other?.publicKey as never)).toBe(true);
});

test("what people compare is the beginning of the hash that OpenSSL finds of the certificate's public key", async () => {
  const key = keyOf(networkFiles(folder).key);
  const { certificate } = await identityFor(key, ["192.0.2.7"], now);
  const file = join(folder, "certificate.pem");
  writeFileSync(file, certificate);
  const openssl = (args: readonly string[], input?: Buffer | string) =>
    spawnSync("openssl", args, { input }).stdout;
  const pem = openssl(["x509", "-in", file, "-noout", "-pubkey"]);
  const der = openssl(["pkey", "-pubin", "-outform", "der"], pem);
  const digits = createHash("sha256").update(der).digest("hex");
  expect(der.length).toBe(91);
  expect(shortFormOf(key)).toMatch(/^(?:[0-9a-f]{4} ){4}[0-9a-f]{4}$/);
  expect(digits.startsWith(shortFormOf(key).replaceAll(" ", ""))).toBe(true);
  expect(openssl(["verify", "-CAfile", file, file]).toString()).toContain("OK");
});

test("a name instead of an address gets no certificate", async () => {
  await expect(identityFor(keyOf(networkFiles(folder).key), ["table.local"], now)).rejects.toThrow(
    "no address",
  );
});
