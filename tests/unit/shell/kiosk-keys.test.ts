import { expect, test } from "vitest";
import { mayPress, type PressedKey } from "../../../electron/shell/windows/kiosk-keys.ts";

/** "Ctrl+Shift+I" as Electron tells it. */
function pressed(keys: string): PressedKey {
  const parts = keys.split("+");
  const key = keys.endsWith("++") ? "+" : (parts.at(-1) ?? "");
  const has = (name: string) => parts.slice(0, -1).includes(name);
  return { key, control: has("Ctrl"), alt: has("Alt"), shift: has("Shift"), meta: has("Meta") };
}

test.each([
  // Reload, developer tools, zoom, print, find, open, save, source, windows and tabs, address, downloads, history.
  ...["Ctrl+r", "Ctrl+Shift+R", "F5", "Ctrl+F5", "F12", "Ctrl+Shift+I", "Ctrl+Shift+J", "Ctrl+Shift+C"],
  ...[
    "Ctrl++",
    "Ctrl+-",
    "Ctrl+0",
    "Ctrl+=",
    "Ctrl+p",
    "Ctrl+Shift+P",
    "Ctrl+f",
    "Ctrl+g",
    "F3",
    "Ctrl+o",
    "Ctrl+s",
  ],
  ...[
    "Ctrl+u",
    "Ctrl+n",
    "Ctrl+Shift+N",
    "Ctrl+t",
    "Ctrl+w",
    "Ctrl+q",
    "Ctrl+l",
    "Ctrl+j",
    "Ctrl+h",
    "Ctrl+d",
  ],
  ...["Ctrl+Tab", "Ctrl+Shift+Tab", "Ctrl+1", "Ctrl+9", "Ctrl+PageUp", "Ctrl+ ", "Ctrl+Escape"],
  // Back, forward, window menu, closing, full screen, menu bar, context menu.
  ...["Alt+ArrowLeft", "Alt+ArrowRight", "Alt+Home", "Alt+ ", "Alt+F4", "Alt+Enter", "Alt+Tab", "Alt+Escape"],
  ...["F1", "F6", "F7", "F10", "F11", "Shift+F10", "ContextMenu", "PrintScreen", "Insert", "Help"],
  ...["BrowserBack", "BrowserRefresh", "BrowserHome", "BrowserSearch", "LaunchMail", "LaunchApplication1"],
  ...["Meta", "Meta+d", "Meta+l", "Meta+r", "Meta+Tab", "Ctrl+Alt+Delete", "Ctrl+Alt+i", "Ctrl+Alt+ "],
])("%s does nothing on a desk that is shut", (keys) => {
  expect(mayPress(pressed(keys), false)).toBe(false);
});

test.each([
  "Meta+q",
  "Meta+w",
  "Meta+m",
  "Meta+h",
  "Meta+Alt+i",
  "Meta+,",
  "Meta+Tab",
  "Meta+r",
  "Ctrl+Meta+f",
  "Ctrl+a",
])("%s does nothing on macOS either", (keys) => {
  expect(mayPress(pressed(keys), true)).toBe(false);
});

test.each([
  ...[
    "a",
    "Z",
    "7",
    "é",
    "漢",
    "/",
    " ",
    "Shift+A",
    "Enter",
    "Tab",
    "Shift+Tab",
    "Escape",
    "Backspace",
    "ArrowDown",
  ],
  ...[
    "Home",
    "PageDown",
    "Dead",
    "Process",
    "Shift",
    "Control",
    "AltGraph",
    "Ctrl+a",
    "Ctrl+C",
    "Ctrl+v",
    "Ctrl+x",
  ],
  ...["Ctrl+z", "Ctrl+Shift+Z", "Ctrl+y", "Ctrl+ArrowLeft", "Ctrl+Backspace"],
  // A third sign of a key comes as Ctrl with Alt.
  ...["Ctrl+Alt+@", "Ctrl+Alt+€", "Ctrl+Alt+{", "Ctrl+Alt+ą"],
  // The program's own keys.
  ...["Alt+0", "Alt+9", "Alt+n", "Alt+R", "Alt+l", "Alt+h", "Ctrl+Enter", "1", "n"],
])("%s works on a desk that is shut", (keys) => {
  expect(mayPress(pressed(keys), false)).toBe(true);
});

test.each(["Meta+a", "Meta+c", "Meta+v", "Meta+x", "Meta+z", "Alt+n", "Alt+ñ"])(
  "%s works on macOS",
  (keys) => {
    expect(mayPress(pressed(keys), true)).toBe(true);
  },
);
