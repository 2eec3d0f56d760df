import type { Bridge } from "../../electron/shell/bridge/bridge-types.ts";

declare global {
  interface Window {
    readonly bridge?: Bridge;
  }
}

/** The shell's functions; null in a window without a bridge (the big screen, a tablet). */
export const bridge: Bridge | null = window.bridge ?? null;
