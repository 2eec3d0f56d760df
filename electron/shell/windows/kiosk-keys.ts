/** A key press as Electron reports it before the page gets it. */
export interface PressedKey {
  readonly key: string;
  readonly control: boolean;
  readonly alt: boolean;
  readonly shift: boolean;
  readonly meta: boolean;
}

/** Keys without a character that a form needs. */
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

/** Editing keys with Ctrl, on macOS with Cmd: select, copy, cut, paste, undo, redo. */
const editing: ReadonlySet<string> = new Set(["a", "c", "x", "v", "z", "y"]);
/** Keys for moving by words, and for sending a form. */
const withControl: ReadonlySet<string> = new Set([
  ...["Enter", "ArrowLeft", "ArrowRight", "Home", "End", "Backspace", "Delete"],
  ...["Shift", "Control", "Alt", "AltGraph"],
]);

/**
 * True if a key may reach the page of a locked or handed-over desk. The list holds the allowed keys, not the refused
 * ones: typing, editing, and the program's own (Alt with a letter or a digit). So reload, developer tools, zoom, print,
 * find, new windows, going back, full screen and unforeseen keys do nothing.
 */
export function mayPress(pressed: PressedKey, mac: boolean): boolean {
  const { key, control, alt, meta } = pressed;
  if (meta) return mac && !control && !alt && isEditing(pressed);
  if (control && alt) return isTyped(key) && !/^[a-z0-9 ]$/i.test(key);
  if (control) return withControl.has(key) || (!mac && isEditing(pressed));
  if (alt) return (isTyped(key) && key !== " ") || ["Alt", "AltGraph", "Shift", "Dead"].includes(key);
  return isTyped(key) || named.has(key);
}

/** True for editing keys. With Shift only redo is one: Ctrl+Shift+C opens the inspector. */
function isEditing({ key, shift }: PressedKey): boolean {
  const letter = key.toLowerCase();
  return editing.has(letter) && (!shift || letter === "z");
}

/** True for a character, false for a key's name. */
function isTyped(key: string): boolean {
  return [...key].length === 1;
}
