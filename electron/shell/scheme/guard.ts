import { app, type Session, type WebContents } from "electron";
import { belongsTo, type Host, hosts, originOf, scheme } from "./hosts.ts";

/** Requests by pages to the outside since the app started. */
export interface BlockedRequests {
  readonly count: number;
  /** The origin of the last one; empty without any. */
  readonly last: string;
}

let blocked: BlockedRequests = { count: 0, last: "" };

/** Returns requests to anything but the app's own scheme, all of them refused. Zero as long as all is well. */
export function blockedRequests(): BlockedRequests {
  return blocked;
}

/** Guards every session and every page, unplanned ones too. Must be called before the app is ready. */
export function setupGuard(): void {
  app.on("session-created", guardSession);
  app.on("web-contents-created", (_event, contents) => guardContents(contents));
}

function guardSession(session: Session): void {
  session.webRequest.onBeforeRequest((details, answer) => answer({ cancel: !mayRequest(details.url) }));
  // Without handlers of our own Electron grants most permissions.
  session.setPermissionRequestHandler((_contents, _permission, answer) => answer(false));
  session.setPermissionCheckHandler(() => false);
  session.setDevicePermissionHandler(() => false);
  session.setBluetoothPairingHandler((_details, answer) => answer({ confirmed: false }));
  session.on("will-download", (event) => event.preventDefault());
  session.setSpellCheckerEnabled(false);
}

function mayRequest(url: string): boolean {
  const { protocol, origin } = new URL(url);
  if (protocol === `${scheme}:`) return true;
  if (protocol === "devtools:" && !app.isPackaged) return true;
  blocked = { count: blocked.count + 1, last: origin === "null" ? protocol : origin };
  return false;
}

function guardContents(contents: WebContents): void {
  contents.on("will-frame-navigate", (event) => {
    if (!staysAtHost(contents, event.url)) event.preventDefault();
  });
  contents.on("will-redirect", (event) => {
    if (!staysAtHost(contents, event.url)) event.preventDefault();
  });
  contents.setWindowOpenHandler(() => ({ action: "deny" }));
  // Without an answer, the first device in reach would be picked.
  contents.on("select-bluetooth-device", (event, _devices, pick) => {
    event.preventDefault();
    pick("");
  });
  contents.on("will-attach-webview", (event) => event.preventDefault());
  // A peer connection would send packets around the request filter.
  contents.setWebRTCIPHandlingPolicy("disable_non_proxied_udp");
}

/**
 * Returns a window's page to its last address when it was led away from its host: Electron asks nobody before a page
 * goes to `about:blank`, and a locked desk would stay blank.
 */
export function keepAtHome(contents: WebContents, host: Host): void {
  let last = `${originOf(host)}/`;
  function follow(url: string): void {
    if (belongsTo(host, url)) last = url;
    else void contents.loadURL(last);
  }
  contents.on("did-navigate", (_event, url) => follow(url));
  contents.on("did-navigate-in-page", (_event, url, isMainFrame) => {
    if (isMainFrame) follow(url);
  });
}

function staysAtHost(contents: WebContents, url: string): boolean {
  return hosts.some((host) => belongsTo(host, contents.getURL()) && belongsTo(host, url));
}
