import { rmSync } from "node:fs";
import { join } from "node:path";
import type { StoreKind } from "../api/door/desk.ts";
import { ownBackups } from "../backups/places.ts";
import type { StoreLocation } from "../store/connection/connect.ts";
import type { Examined } from "../store/connection/examine.ts";
import { openStore } from "../store/connection/open.ts";
import type { Store } from "../store/connection/store.ts";
import { besides } from "../store/keeping/seal.ts";

/** Returns the file of the hall's own store, in the data folder. */
function ownStoreFile(folder: string): string {
  return join(folder, "tapeline.sqlite");
}

/** Returns the hall's own store and the library that opens it. */
export function ownStore(folder: string, nativeBinding: string | undefined): StoreLocation {
  const extra = nativeBinding === undefined ? {} : { nativeBinding };
  const file = ownStoreFile(folder);
  return { file, backups: ownBackups(file), ...extra };
}

/**
 * Returns an opener of stores in `folder`: the hall's own, or the demo's, which is new each time. `nativeBinding` is
 * the library for a runtime that needs its own build of it; `accepted` opens the own store as it is. `examined` is what an
 * examination of the own store has just found, for its first opening.
 */
export function storeOpener(
  folder: string,
  nativeBinding: string | undefined,
  accepted = false,
  examined?: Examined,
): (kind: StoreKind) => Store {
  const own = ownStore(folder, nativeBinding);
  let fresh = examined;
  return (kind) => {
    if (kind === "own") {
      const found = fresh;
      fresh = undefined;
      return openStore({ ...own, accepted }, found);
    }
    const { file: _file, backups: _backups, ...extra } = own;
    const file = join(folder, "demo.sqlite");
    for (const part of ["", ...besides]) rmSync(`${file}${part}`, { force: true });
    return openStore({ file, ...extra });
  };
}
