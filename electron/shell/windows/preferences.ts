import { app, type WebPreferences } from "electron";
import type { Host } from "../scheme/hosts.ts";
import { sessionOf } from "../scheme/scheme.ts";

/** Returns the settings of every page of a host, in any window: sandboxed, without Node. */
export function preferencesOf(host: Host): WebPreferences {
  return {
    session: sessionOf(host),
    sandbox: true,
    contextIsolation: true,
    nodeIntegration: false,
    webSecurity: true,
    spellcheck: false,
    devTools: !app.isPackaged,
  };
}
