import fc from "fast-check";
import { expect, test } from "vitest";
import { readInvitation, splitInvitation } from "../../../electron/domain/devices/invitation.ts";

/** Addresses are those for documents (RFC 5737 3, RFC 3849 2). */
const shown = { address: "https://192.0.2.7:8443/", code: "K7MD 3QXW", key: "0f1e 2d3c 4b5a 6978 8796" };
const read = { address: "192.0.2.7", port: 8443, code: "K7MD3QXW", key: "0f1e2d3c4b5a69788796" };

test("what the table shows is read, also as people type it", () => {
  expect(readInvitation(shown)).toEqual(read);
  expect(
    readInvitation({ address: " 192.0.2.7 ", code: "k7md-3qxw", key: "OF1E-2D3C-4B5A-6978-8796" }),
  ).toEqual(read);
});

test.each([
  ["192.0.2.7:9443", { address: "192.0.2.7", port: 9443 }],
  ["https://[2001:db8::7]:9443/", { address: "2001:db8::7", port: 9443 }],
  ["2001:db8::7", { address: "2001:db8::7", port: 8443 }],
])("%s is an address", (address, place) => {
  expect(readInvitation({ ...shown, address })).toEqual({ ...read, ...place });
});

test.each([
  "",
  "table",
  "table.example:8443",
  "192.0.2",
  "192.0.2.7:0",
  "192.0.2.7:70000",
  "192.0.2.7/x",
  "http://192.0.2.7",
])("%j is none: no name is looked up, and no path is followed", (address) => {
  expect(readInvitation({ ...shown, address })).toEqual({ wrong: "address" });
});

test("a code or a key that is too short, too long or of other signs is said", () => {
  expect(readInvitation({ ...shown, code: "K7MD" })).toEqual({ wrong: "code" });
  expect(readInvitation({ ...shown, code: "K7MD 3QXW 1" })).toEqual({ wrong: "code" });
  expect(readInvitation({ ...shown, key: "0f1e 2d3c 4b5a 6978" })).toEqual({ wrong: "key" });
  expect(readInvitation({ ...shown, key: "0f1e 2d3c 4b5a 6978 879x" })).toEqual({ wrong: "key" });
  // A key that is nothing would be the beginning of every key.
  expect(readInvitation({ ...shown, key: "" })).toEqual({ wrong: "key" });
});

test("a line with all three is taken apart, with a QR code's sign or a space between", () => {
  for (const line of [
    `${shown.address} ${shown.code} ${shown.key}`,
    `${shown.address}#K7MD3QXW ${shown.key}`,
    " 192.0.2.7:8443 K7MD3QXW0f1e2d3c4b5a69788796 ",
  ]) {
    const typed = splitInvitation(line);
    expect(typed === null ? null : readInvitation(typed), line).toEqual(read);
  }
  expect(splitInvitation("192.0.2.7:8443")).toBeNull();
  expect(splitInvitation(`${shown.address} ${shown.code}`)).toBeNull();
});

test("whatever is typed, a key of 80 bits comes out or none", () => {
  fc.assert(
    fc.property(fc.string(), fc.string(), (code, key) => {
      const came = readInvitation({ ...shown, code, key });
      if (!("wrong" in came))
        expect([came.key, came.code]).toEqual([expect.stringMatching(/^[0-9a-f]{20}$/), expect.anything()]);
    }),
  );
});
