import type { ReactNode, Ref } from "react";
import { Button as AriaButton } from "react-aria-components/Button";
import { Link } from "wouter";
import { mayOpen, useStanding } from "../../app/standing.tsx";
import css from "./Button.module.css";
import { KeyHint } from "./KeyHint.tsx";

type Kind = "primary" | "quiet" | "danger";

interface LookProps {
  readonly children: ReactNode;
  /** primary: the one next step of a screen (floor tape). quiet: everything else. danger: undoes or removes. */
  readonly kind?: Kind;
  readonly size?: "normal" | "large";
  /** The key that does the same, shown on the button; the screen binds it (`useKeys`). */
  readonly hint?: string;
}

interface ButtonProps extends LookProps {
  readonly onPress?: () => void;
  readonly type?: "button" | "submit";
  readonly disabled?: boolean;
  /** True while working: pressing again does nothing, and the focus stays. The message strip reports the outcome. */
  readonly busy?: boolean;
  /** For a button whose text is only a symbol. */
  readonly label?: string;
  readonly autoFocus?: boolean;
  /** To look at the button, or to move the focus to it. */
  readonly buttonRef?: Ref<HTMLButtonElement>;
  /** Leaves the focus where it is when pressed with a finger or the mouse: typing goes on where it was. */
  readonly keepsFocus?: boolean;
}

/** A button. Name it by its effect ("Open the day"), never "OK". */
export function Button(props: ButtonProps) {
  const { children, kind = "quiet", size = "normal", hint, onPress, type = "button" } = props;
  const { disabled = false, busy = false, label, autoFocus = false, keepsFocus = false } = props;
  return (
    <AriaButton
      className={css.button ?? ""}
      data-kind={kind}
      data-size={size}
      data-busy={busy}
      type={busy ? "button" : type}
      isDisabled={disabled}
      autoFocus={autoFocus}
      preventFocusOnPress={keepsFocus}
      {...(props.buttonRef !== undefined && { ref: props.buttonRef })}
      {...(onPress && !busy && { onPress })}
      {...(label !== undefined && { "aria-label": label })}
    >
      <span className={css.face}>
        {children}
        {hint !== undefined && <KeyHint keys={hint} />}
      </span>
    </AriaButton>
  );
}

interface LinkButtonProps extends LookProps {
  /** A screen of the desk, for example "/check-in". */
  readonly to: string;
}

/** A link to another screen that looks like a button; hidden if the desk's user may not go there. */
export function LinkButton({ children, kind = "quiet", size = "normal", hint, to }: LinkButtonProps) {
  const { post } = useStanding();
  if (!mayOpen(post, to)) return null;
  return (
    <Link className={css.button ?? ""} data-kind={kind} data-size={size} href={to}>
      <span className={css.face}>
        {children}
        {hint !== undefined && <KeyHint keys={hint} />}
      </span>
    </Link>
  );
}
