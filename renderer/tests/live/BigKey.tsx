import type { ReactNode } from "react";
import { KeyHint } from "../../parts/controls/KeyHint.tsx";
import css from "./BigKey.module.css";
import { onDown } from "./onDown.ts";

interface BigKeyProps {
  readonly children: ReactNode;
  /** The key that does the same, shown on it. */
  readonly hint?: string;
  /** next: the next action (floor tape). plain: everything else. quiet: rarely wanted. */
  readonly kind?: "next" | "plain" | "quiet";
  readonly size?: "normal" | "large" | "huge";
  /** Called with the `timeStamp` when the finger comes down. */
  readonly onPress: (timeStamp: number) => void;
  readonly label?: string;
  readonly pressed?: boolean;
}

/** A key for a finger on a live screen: acts when the finger comes down, and leaves the focus to the screen's keys. */
export function BigKey(props: BigKeyProps) {
  const { children, hint, kind = "plain", size = "normal", onPress, label, pressed } = props;
  const down = onDown(onPress);
  return (
    <button
      type="button"
      className={css.key}
      data-kind={kind}
      data-size={size}
      aria-label={label}
      aria-pressed={pressed}
      aria-keyshortcuts={hint}
      onClick={down.onClick}
      onPointerDown={down.onPointerDown}
      onMouseDown={(event) => event.preventDefault()}
    >
      <span className={css.face}>
        {children}
        {hint !== undefined && <KeyHint keys={hint} />}
      </span>
    </button>
  );
}
