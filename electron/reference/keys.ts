import type { KeyObject } from "node:crypto";
import { readFileSync } from "node:fs";
import { newKey, publicKeyOf, readKey, shortKey } from "../api/reference/signature.ts";
import { sentence } from "../domain/words.ts";
import { writeNew } from "../files/whole.ts";
import { NothingToMerge } from "./nothing.ts";

/** Most bytes that a key's file has; what is larger is something else. */
const mostBytes = 10_000;

/**
 * Writes a publisher's new private key into a new file that only this computer's user can read; returns its short form.
 * @throws NothingToMerge when there is a file already: whoever loses a key has to begin anew in every hall
 */
export async function writeKey(path: string): Promise<string> {
  const pem = newKey();
  try {
    await writeNew(path, pem, 0o600);
  } catch (error) {
    if (error instanceof Error && "code" in error && error.code === "EEXIST") {
      throw new NothingToMerge(sentence("references.keyThere", { path }));
    }
    throw error;
  }
  return shortFormOf(keyIn(pem, path));
}

/** @throws NothingToMerge when it is no publisher's key */
export function readKeyFile(path: string): KeyObject {
  let pem: string;
  try {
    pem = readFileSync(path, "utf8");
  } catch {
    throw new NothingToMerge(sentence("references.noKeyFile", { path }));
  }
  return keyIn(pem, path);
}

function keyIn(pem: string, path: string): KeyObject {
  const key = pem.length > mostBytes ? undefined : readKey(pem);
  if (key === undefined) throw new NothingToMerge(sentence("references.notKey", { path }));
  return key;
}

/** Returns a private key's public half as people compare it. */
export function shortFormOf(key: KeyObject): string {
  return shortKey(publicKeyOf(key));
}
