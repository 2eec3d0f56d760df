import { expect, test } from "vitest";
import { readTable } from "../../../electron/api/reference/read-table.ts";
import { publicKeyOf, shortKey, signatureFile } from "../../../electron/api/reference/signature.ts";
import { Refusal } from "../../../electron/domain/refusal.ts";
import { group, invented, plainTable, repacked, tableOf } from "./making-table.ts";

const today = "2026-11-30";

/** The key of the sentence with which a table is refused, or "taken". */
function whyNot(zip: Uint8Array, on = today): string {
  try {
    readTable(zip, on);
    return "taken";
  } catch (error) {
    if (error instanceof Refusal) return error.sentence.key;
    throw error;
  }
}

const text = (bytes: Uint8Array | undefined) => new TextDecoder().decode(bytes);
const bytes = (content: string) => new Uint8Array(Buffer.from(content));

test("a table is read as it was written", () => {
  const key = invented();
  const read = readTable(tableOf({}, key), today);
  expect(read).toEqual({ ...plainTable, publicKey: publicKeyOf(key) });
  expect(shortKey(read.publicKey)).toMatch(/^([0-9a-f]{4} ){4}[0-9a-f]{4}$/);
});

test("an unsigned, changed, wrongly signed or expired table is refused, each with its sentence", () => {
  const key = invented();
  const zip = tableOf({}, key);
  expect(whyNot(repacked(zip, (files) => delete files["signature.json"]))).toBe("referenceTable.unsigned");
  const changed = repacked(zip, (files) => {
    files["percentiles.csv"] = bytes(text(files["percentiles.csv"]).replace("1,5,1,2", "1,5,0,2"));
  });
  expect(whyNot(changed)).toBe("reference.changed");
  const renamed = repacked(zip, (files) => {
    files["datapackage.json"] = bytes(text(files["datapackage.json"]).replace("harbour", "hillside"));
  });
  expect(whyNot(renamed)).toBe("referenceTable.signature");
  const other = repacked(zip, (files) => {
    files["signature.json"] = bytes(signatureFile(files["datapackage.json"] ?? new Uint8Array(), invented()));
  });
  expect(whyNot(other)).toBe("referenceTable.signature");
  expect(whyNot(zip, "2028-11-02")).toBe("referenceTable.expired");
  expect(whyNot(zip, "2028-11-01")).toBe("taken");
});

test("no byte of a table can be changed unseen", () => {
  const zip = tableOf();
  for (let at = 0; at < zip.length; at += 7) {
    const flipped = zip.slice();
    flipped[at] = (flipped[at] ?? 0) ^ 1;
    // What is left are bytes of the zip's own that no content depends on, such as its times.
    if (whyNot(flipped) === "taken") expect(readTable(flipped, today)).toEqual(readTable(zip, today));
  }
});

test("a group of too few marks or halls, or a percentile of too few, is refused though its signature fits", () => {
  expect(whyNot(tableOf({ groups: [{ ...group, marks: 19, countsAs: 19 }] }))).toBe("reference.row");
  expect(whyNot(tableOf({ groups: [{ ...group, halls: 2 }] }))).toBe("reference.row");
  expect(whyNot(tableOf({ groups: [{ ...group, marks: 99, countsAs: 50 }] }))).toBe("reference.row");
  expect(whyNot(tableOf({ groups: [{ ...group, marks: 100, countsAs: 50 }] }))).toBe("taken");
  expect(whyNot(tableOf({ groups: [group, group] }))).toBe("reference.unreadable");
});
