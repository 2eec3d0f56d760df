import type { ReactNode } from "react";
import { Link } from "wouter";
import css from "./ChoiceList.module.css";

interface ChoiceListProps {
  /** Choices, each in an `li`. */
  readonly children: ReactNode;
  readonly className?: string | undefined;
}

/** A list of links of which the one that is shown has a strip of tape. */
export function ChoiceList({ children, className = "" }: ChoiceListProps) {
  return <ul className={`${css.list} ${className}`}>{children}</ul>;
}

interface ChoiceLinkProps {
  readonly to: string;
  readonly current: boolean;
  readonly children: ReactNode;
}

/** One choice of a {@link ChoiceList}. */
export function ChoiceLink({ to, current, children }: ChoiceLinkProps) {
  return (
    <li>
      <Link className={css.choice} href={to} aria-current={current ? "page" : undefined}>
        {children}
      </Link>
    </li>
  );
}
