/** A key as Electron tells it before the page hears of it. */
export interface PressedKey {
  readonly key: string;
  readonly control: boolean;
  readonly alt: boolean;
  readonly shift: boolean;
  readonly meta: boolean;
}

/** Keys without a sign of their own that a form needs. */
const named: ReadonlySet<string> = new Set([
  ...["Enter", "Tab", "Escape", "Backspace", "Delete", "Home", "End", "PageUp", "PageDown"],
  ...["ArrowLeft", "ArrowRight", "ArrowUp", "ArrowDown"],
  ...[
    "Shift",
    "Control",
    "Alt",
    "AltGraph",
    "CapsLock",
    "NumLock",
    "Dead",
    "Process",
    "Compose",
    "Unidentified",
  ],
]);

/** What editing needs with Ctrl, on macOS with Cmd: select, copy, cut, paste, undo, redo. */
const editing: ReadonlySet<string> = new Set(["a", "c", "x", "v", "z", "y"]);
/** Moving by words, and sending a form. */
const withControl: ReadonlySet<string> = new Set([
  ...["Enter", "ArrowLeft", "ArrowRight", "Home", "End", "Backspace", "Delete"],
  ...["Shift", "Control", "Alt", "AltGraph"],
]);

/**
 * Whether a key may reach the page of a desk that is locked or handed over. What is let through is listed, and not what
 * is refused: typing, editing, and the program's own keys (Alt with a letter or a digit). So reload, developer tools,
 * zoom, print, find, new windows, going back, full screen and keys that nobody thought of do nothing.
 */
export function mayPress(pressed: PressedKey, mac: boolean): boolean {
  const { key, control, alt, meta } = pressed;
  if (meta) return mac && !control && !alt && isEditing(pressed);
  if (control && alt) return isTyped(key) && !/^[a-z0-9 ]$/i.test(key);
  if (control) return withControl.has(key) || (!mac && isEditing(pressed));
  if (alt) return (isTyped(key) && key !== " ") || ["Alt", "AltGraph", "Shift", "Dead"].includes(key);
  return isTyped(key) || named.has(key);
}

/** With Shift only redoing is editing: Ctrl+Shift+C looks into the page. */
function isEditing({ key, shift }: PressedKey): boolean {
  const letter = key.toLowerCase();
  return editing.has(letter) && (!shift || letter === "z");
}

/** A sign, and not a key's name. */
function isTyped(key: string): boolean {
  return [...key].length === 1;
}
