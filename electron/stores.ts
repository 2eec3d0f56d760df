import { rmSync } from "node:fs";
import { join } from "node:path";
import type { StoreKind } from "./api/desk.ts";
import { openStore } from "./store/open.ts";
import type { Store } from "./store/store.ts";

/** The file of the hall's own store, in the data folder. */
export function ownStoreFile(folder: string): string {
  return join(folder, "tapeline.sqlite");
}

/**
 * Opens stores in `folder`: the hall's own, or the demonstration's, which begins anew each time.
 * `nativeBinding` is the library for a runtime that needs its own build of it.
 */
export function storeOpener(folder: string, nativeBinding: string | undefined): (kind: StoreKind) => Store {
  const extra = nativeBinding === undefined ? {} : { nativeBinding };
  return (kind) => {
    if (kind === "own") return openStore({ file: ownStoreFile(folder), ...extra });
    const file = join(folder, "demo.sqlite");
    for (const part of ["", "-wal", "-shm"]) rmSync(`${file}${part}`, { force: true });
    return openStore({ file, ...extra });
  };
}
