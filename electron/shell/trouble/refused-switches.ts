/**
 * Refused switches of Chromium and Electron: they would open pages to other programs, start others in their place,
 * weaken the guards, or write loaded or printed data to a file. Node's own, such as --inspect, are turned off by the
 * fuses.
 */
const refused: readonly string[] = [
  // Other programs look in, or are started too.
  ...["remote-debugging-port", "remote-debugging-pipe", "remote-debugging-address", "remote-allow-origins"],
  ...["remote-debugging-io-pipes", "remote-debugging-targets", "enable-ui-devtools", "enable-automation"],
  ...[
    "renderer-cmd-prefix",
    "utility-cmd-prefix",
    "gpu-launcher",
    "ppapi-plugin-launcher",
    "browser-subprocess-path",
  ],
  ...["renderer-startup-dialog", "gpu-startup-dialog", "utility-startup-dialog"],
  ...["wait-for-debugger", "wait-for-debugger-children", "load-extension", "disable-extensions-except"],
  // The sandbox and the isolation of pages.
  ...[
    "no-sandbox",
    "single-process",
    "in-process-gpu",
    "no-zygote",
    "no-zygote-sandbox",
    "no-unsandboxed-zygote",
  ],
  ...["disable-setuid-sandbox", "disable-namespace-sandbox", "disable-seccomp-filter-sandbox"],
  ...["disable-gpu-sandbox", "allow-sandbox-debugging", "allow-third-party-modules", "process-per-site"],
  ...["disable-web-security", "disable-site-isolation-trials", "disable-site-isolation-for-policy"],
  ...["allow-file-access-from-files", "allow-running-insecure-content", "allow-insecure-localhost"],
  ...[
    "unsafely-treat-insecure-origin-as-secure",
    "ignore-certificate-errors",
    "ignore-certificate-errors-spki-list",
  ],
  ...["js-flags", "enable-blink-features", "disable-blink-features", "enable-features", "disable-features"],
  ...["enable-experimental-web-platform-features", "use-fake-ui-for-media-stream"],
  // Data written to a file or passed on.
  ...["enable-logging", "log-file", "vmodule", "diagnostics-dir", "log-net-log", "net-log-capture-mode"],
  ...["ssl-key-log-file", "trace-startup", "trace-startup-file", "trace-startup-format", "trace-config-file"],
  ...["trace-to-file", "trace-to-console", "trace-shutdown", "trace-shutdown-file", "enable-tracing"],
  ...["enable-tracing-output", "crash-dumps-dir", "full-memory-crash-report", "enable-crash-reporter"],
  // Network settings that nothing here needs.
  ...["host-rules", "host-resolver-rules", "proxy-server", "proxy-pac-url", "proxy-auto-detect"],
  ...["proxy-bypass-list", "auth-server-whitelist", "auth-negotiate-delegate-whitelist"],
];

/**
 * Returns the first refused switch among the words that started a program, or undefined. Root has to go without the
 * sandbox: Chromium has none for root.
 */
export function refusedAmong(words: readonly string[], isRoot: boolean): string | undefined {
  return refused.find((name) => isGiven(name, words) && !(isRoot && name === "no-sandbox"));
}

/** True if a switch is given. Chromium reads one dash as two, and on Windows a slash as well. */
function isGiven(name: string, words: readonly string[]): boolean {
  return words.some((word) => new RegExp(`^(?:--?|/)${name}(?:=|$)`, "i").test(word));
}
