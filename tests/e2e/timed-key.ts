/** What the developer tools' protocol needs to press a key (`Input.dispatchKeyEvent`). */
export interface KeyDown {
  readonly type: "keyDown";
  readonly key: string;
  readonly code: string;
  readonly windowsVirtualKeyCode: number;
  readonly modifiers: number;
  /** In s since 1970: when the finger came down, whenever the window gets to hear of it. */
  readonly timestamp: number;
}

const shift = 8;

/**
 * A digit ("3", "Shift+Digit3"), or Space, that came down at `at` ms of this process's clock. A busy machine brings a
 * press late; its time stamp says when it was, as the system's own does.
 */
export function timedKey(name: string, at: number): KeyDown {
  const [, shifted, , digit] = /^(Shift\+)?(?:Space|(Digit)?(\d))$/.exec(name) ?? [];
  if (digit === undefined && name !== "Space") throw new Error(`No timed key is known by the name ${name}.`);
  const timestamp = (Date.now() - (performance.now() - at)) / 1000;
  const what =
    digit === undefined
      ? { key: " ", code: "Space", windowsVirtualKeyCode: 32 }
      : { key: digit, code: `Digit${digit}`, windowsVirtualKeyCode: 48 + Number(digit) };
  return { type: "keyDown", ...what, modifiers: shifted === undefined ? 0 : shift, timestamp };
}
