import type { ReactNode } from "react";
import css from "./Tag.module.css";

interface TagProps {
  readonly children: ReactNode;
  /** go: under way (tape). quiet: a fact. alert: needs attention. Each has its own outline, not only its colour. */
  readonly tone?: "go" | "quiet" | "alert";
}

/** A state in a word or two. */
export function Tag({ children, tone = "quiet" }: TagProps) {
  return (
    <span className={`small strong ${css.tag}`} data-tone={tone}>
      {children}
    </span>
  );
}
