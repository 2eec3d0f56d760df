import fs, { statSync } from "node:fs";
import { syncBuiltinESMExports } from "node:module";

/** How many bytes of a file are read while something is done. */
export function bytesRead(file: string, work: () => void): number {
  const [real, ino] = [fs.readSync, statSync(file).ino];
  let bytes = 0;
  fs.readSync = ((...all: Parameters<typeof real>) => {
    const read = real(...all);
    if (fs.fstatSync(all[0]).ino === ino) bytes += read;
    return read;
  }) as typeof real;
  syncBuiltinESMExports();
  try {
    work();
  } finally {
    fs.readSync = real;
    syncBuiltinESMExports();
  }
  return bytes;
}
