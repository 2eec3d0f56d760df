import type { ReactNode } from "react";
import css from "./PadKey.module.css";

interface PadKeyProps {
  /** What it is called where its face does not say so. */
  readonly label?: string;
  /** Names a key that has a place of its own on its pad. */
  readonly sign?: string;
  readonly onPress: () => void;
  readonly children: ReactNode;
}

/** One key of a pad for fingers; the keyboard has keys of its own, so that Tab passes it by. */
export function PadKey({ label, sign, onPress, children }: PadKeyProps) {
  return (
    <button
      type="button"
      tabIndex={-1}
      className={css.key}
      data-sign={sign}
      aria-label={label}
      onClick={onPress}
    >
      {children}
    </button>
  );
}

/** The sign on the key that deletes the last digit. */
export function BackSign() {
  return (
    <svg viewBox="0 0 32 20" className={css.sign} aria-hidden="true">
      <path d="M10 2h20v16H10L2 10zM15 6l8 8m0-8-8 8" />
    </svg>
  );
}
