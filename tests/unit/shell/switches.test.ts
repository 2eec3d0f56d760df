import { expect, test } from "vitest";
import { refusedAmong } from "../../../electron/shell/trouble/refused-switches.ts";

const start = "/opt/tapeline/tapeline";

// Sources: Electron's documentation, "Supported Command Line Switches", and content/public/common/content_switches.cc,
// sandbox/policy/switches.cc and net/base of Chromium, from memory; the list need not be whole to be worth having.
test.each([
  ...["--remote-debugging-port=9222", "-remote-debugging-port=9222", "--REMOTE-DEBUGGING-PIPE"],
  ...["--renderer-cmd-prefix=xterm -e gdb", "--utility-cmd-prefix=/tmp/a", "--gpu-launcher=/tmp/a"],
  ...["--browser-subprocess-path=/tmp/a", "--single-process", "--no-zygote", "--disable-gpu-sandbox"],
  ...["--disable-setuid-sandbox", "--enable-logging", "--enable-logging=file", "--log-file=/tmp/log"],
  ...["--trace-startup", "--trace-startup-file=/tmp/a", "--proxy-pac-url=http://127.0.0.1/a.pac"],
  ...[
    "--host-resolver-rules=MAP * 127.0.0.1",
    "--disable-features=IsolateOrigins",
    "--js-flags=--allow-natives-syntax",
  ],
])("%s is refused, to root too", (word) => {
  const name = /^-+([a-z-]+)/i.exec(word)?.[1]?.toLowerCase();
  expect(refusedAmong([start, word], false)).toBe(name);
  expect(refusedAmong([start, "--self-check", word], true)).toBe(name);
});

test("without the sandbox only root may start, for whom there is none", () => {
  expect(refusedAmong([start, "--no-sandbox"], false)).toBe("no-sandbox");
  expect(refusedAmong([start, "--no-sandbox"], true)).toBeUndefined();
  expect(refusedAmong([start, "--no-sandbox", "--single-process"], true)).toBe("single-process");
});

test.each([
  "--self-check",
  "--ozone-platform=x11",
  "--force-device-scale-factor=1.25",
  "--disable-gpu",
  "--log-level=3",
])("%s is let through", (word) => {
  expect(refusedAmong([start, word], false)).toBeUndefined();
});
