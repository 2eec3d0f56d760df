import { existsSync, readFileSync, rmSync } from "node:fs";
import { dirname, join } from "node:path";
import { syncFolder, writeWholeText } from "../files/through.ts";
import type { MembershipKeep } from "../network/membership-kept.ts";

/** The system's own place for secrets, as far as it has one. */
export interface Sealer {
  /** Seals a text so that only this computer's user can open it; null where the system has no means for that. */
  seal(text: string): Uint8Array | null;
  /** @throws where it can't be opened */
  open(sealed: Uint8Array): string;
}

const sealedBegins = "sealed ";

const fileIn = (folder: string) => join(folder, "joined-table");

/** True where this program has joined a table: known without opening what is sealed. */
export function isJoined(folder: string): boolean {
  return existsSync(fileIn(folder));
}

/**
 * Keeps the table that this program joined in the data folder, readable by this computer's user alone (mode 0600). Where
 * the system can seal it, the file is of no use to whoever takes it to another computer.
 */
export function membershipFiles(folder: string, sealer: Sealer): MembershipKeep {
  const file = fileIn(folder);
  return {
    read() {
      if (!existsSync(file)) return null;
      const text = readFileSync(file, "utf8");
      return text.startsWith(sealedBegins)
        ? sealer.open(Buffer.from(text.slice(sealedBegins.length), "base64"))
        : text;
    },
    write(text) {
      if (text === null) {
        rmSync(file, { force: true });
        syncFolder(dirname(file));
        return;
      }
      const sealed = sealer.seal(text);
      writeWholeText(
        file,
        sealed === null ? text : `${sealedBegins}${Buffer.from(sealed).toString("base64")}`,
      );
    },
  };
}
