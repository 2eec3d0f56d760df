import { app } from "electron";

/**
 * Turns off everything in Chromium that would use a network on its own. Must be called before the app is ready. Pages
 * are stopped elsewhere too (content policy, request filter); this is for traffic that no page requests.
 */
export function setupNoNetwork(): void {
  // No host name resolves, so not even name look-ups leave the computer.
  app.commandLine.appendSwitch("host-resolver-rules", "MAP * ~NOTFOUND");
  app.commandLine.appendSwitch("no-proxy-server");
  app.commandLine.appendSwitch("no-pings");
  app.commandLine.appendSwitch("disable-background-networking");
  app.commandLine.appendSwitch("disable-component-update");
  app.commandLine.appendSwitch("disable-domain-reliability");
}
