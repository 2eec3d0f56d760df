import type { Bridge } from "../../electron/shell/bridge/bridge-types.ts";

declare global {
  interface Window {
    readonly bridge?: Bridge;
  }
}

/** What only the shell can do; null in a window that has no bridge (the board, a tablet). */
export const bridge: Bridge | null = window.bridge ?? null;
