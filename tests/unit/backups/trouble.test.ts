import { expect, test } from "vitest";
import { BackupUnusable } from "../../../electron/backups/file.ts";
import { whyNotMade, whyNotUsed } from "../../../electron/backups/trouble.ts";
import { StoreRefused } from "../../../electron/store/connection/refused.ts";

test.each([
  ["ENOSPC", "backups.full"],
  ["EDQUOT", "backups.full"],
  ["SQLITE_FULL", "backups.full"],
  ["EROFS", "backups.readOnly"],
  ["EACCES", "backups.readOnly"],
  ["SQLITE_READONLY", "backups.readOnly"],
  ["EIO", "backups.failed"],
  ["SQLITE_IOERR_WRITE", "backups.failed"],
])("what the disk says with %s is told as %s", (code, key) => {
  expect(whyNotMade(Object.assign(new Error("no"), { code })).key).toBe(key);
});

test("why a backup can't be used is told apart", () => {
  const told = (["unreadable", "locked", "wrong-passphrase"] as const).map(
    (why) => whyNotUsed(new BackupUnusable(why)).key,
  );
  expect(told).toEqual(["backups.unreadable", "backups.locked", "backups.wrongPassphrase"]);
  expect(whyNotUsed(new StoreRefused("newer", { version: 9, known: 3 })).key).toBe("store.newer");
  expect(whyNotUsed(new StoreRefused("damaged")).key).toBe("backups.unreadable");
});
