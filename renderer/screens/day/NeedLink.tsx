import { Link } from "wouter";
import css from "./DayScreen.module.css";

interface NeedLinkProps {
  readonly to: string;
  readonly text: string;
  readonly onGo?: () => void;
}

/** Links a task to the screen where it is done. */
export function NeedLink({ to, text, onGo }: NeedLinkProps) {
  return (
    <Link className={`strong ${css.need}`} href={to} {...(onGo !== undefined && { onClick: onGo })}>
      {text}
      <svg className={css.arrow} viewBox="0 0 12 16" aria-hidden="true">
        <path d="m2 2 7 6-7 6" fill="none" stroke="currentColor" strokeWidth="3" />
      </svg>
    </Link>
  );
}
