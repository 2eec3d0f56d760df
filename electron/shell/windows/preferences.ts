import { app, type WebPreferences } from "electron";
import type { Host } from "../scheme/hosts.ts";
import { sessionOf } from "../scheme/scheme.ts";

/** What every page of a host runs under, whatever window it is shown in: in the sandbox, with nothing of Node. */
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
