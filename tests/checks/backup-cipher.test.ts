import fc from "fast-check";
import { expect, test } from "vitest";
import { deriveKey, keyOf, lockBytes, unlockBytes } from "../../electron/backups/cipher.ts";

const hex = (text: string) => Buffer.from(text.replaceAll(/\s/g, ""), "hex");

// RFC 7914, "The scrypt Password-Based Key Derivation Function", section 12 (the three that take little memory).
test.each([
  {
    passphrase: "",
    salt: "",
    options: { N: 16, r: 1, p: 1 },
    key: `77d6576238657b203b19ca42c18a0497f16b4844e3074ae8dfdffa3fede21442
      fcd0069ded0948f8326a753a0fc81f17e8d3e0fb2e0d3628cf35e20c38d18906`,
  },
  {
    passphrase: "password",
    salt: "NaCl",
    options: { N: 1024, r: 8, p: 16 },
    key: `fdbabe1c9d3472007856e7190d01e9fe7c6ad7cbc8237830e77376634b373162
      2eaf30d92e22a3886ff109279d9830dac727afb94a83ee6d8360cbdfa2cc0640`,
  },
  {
    passphrase: "pleaseletmein",
    salt: "SodiumChloride",
    options: { N: 16_384, r: 8, p: 1 },
    key: `7023bdcb3afd7348461c06cd81fd38ebfda8fbba904f8e3ea9b543f6545da1f2
      d5432955613f0fcf62d49705242a9af9e61e85dc0d651e40dfcf017b45575887`,
  },
])("scrypt of $passphrase is as RFC 7914 prints it", async ({ passphrase, salt, options, key }) => {
  expect(await deriveKey(passphrase, Buffer.from(salt), 64, { ...options, maxmem: 2 ** 26 })).toEqual(
    hex(key),
  );
});

// McGrew & Viega, "The Galois/Counter Mode of Operation (GCM)", appendix B, test cases 14 and 16 (256-bit keys).
const case16 = {
  key: hex("feffe9928665731c6d6a8f9467308308feffe9928665731c6d6a8f9467308308"),
  nonce: hex("cafebabefacedbaddecaf888"),
  beside: hex("feedfacedeadbeeffeedfacedeadbeefabaddad2"),
  bytes: hex(`d9313225f88406e5a55909c5aff5269a86a7a9531534f7da2e4c303d8a318a72
    1c3c0c95956809532fcf0e2449a6b525b16aedf5aa0de657ba637b39`),
  sealed: hex(`522dc1f099567d07f47f37a32a84427d643a8cdcbfe5c0c97598a2bd2555d1aa
    8cb08e48590dbb3da7b08b1056828838c5f61e6393ba7a0abcc9f662
    76fc6ece0f4e1768cddf8853bb2d551b`),
};

test("AES-256-GCM seals test case 16 as its authors print it, and opens it again", () => {
  const { key, nonce, beside, bytes, sealed } = case16;
  expect(lockBytes(key, nonce, beside, bytes)).toEqual(sealed);
  expect(unlockBytes(key, nonce, beside, sealed)).toEqual(bytes);
});

test("AES-256-GCM seals test case 14, one block of zeros, as its authors print it", () => {
  const sealed = lockBytes(Buffer.alloc(32), Buffer.alloc(12), Buffer.alloc(0), Buffer.alloc(16));
  expect(sealed).toEqual(hex("cea7403d4d606b6e074ec5d3baf39d18 d0d1c8a799996bf0265b98b5d48ab919"));
});

test("one flipped bit anywhere, sealed or beside it, and nothing is opened", () => {
  const { key, nonce, beside, sealed } = case16;
  const whole = Buffer.concat([beside, sealed]);
  fc.assert(
    fc.property(fc.nat(whole.length * 8 - 1), (bit) => {
      const bent = Buffer.from(whole);
      bent.writeUInt8(bent.readUInt8(bit >> 3) ^ (1 << (bit & 7)), bit >> 3);
      const parts = [bent.subarray(0, beside.length), bent.subarray(beside.length)] as const;
      expect(unlockBytes(key, nonce, ...parts)).toBeUndefined();
    }),
  );
});

test("a passphrase typed on another keyboard is the same passphrase", async () => {
  const scrypt = { N: 2 ** 15, r: 8, p: 1, salt: Buffer.alloc(16, 7).toString("base64") } as const;
  expect(await keyOf("Caf\u00e9 ﬁne", scrypt)).toEqual(await keyOf("Cafe\u0301 fine", scrypt));
});
