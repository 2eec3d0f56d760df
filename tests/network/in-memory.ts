import type { NetworkKeep } from "../../electron/network/kept.ts";

/** Keeps key and switch in memory, for desks that no window shows. */
export function networkInMemory(): NetworkKeep {
  let key: string | null = null;
  let text: string | null = null;
  return {
    key: {
      read: () => key,
      write(pem) {
        key = pem;
      },
    },
    read: () => text,
    write(written) {
      text = written;
    },
  };
}
