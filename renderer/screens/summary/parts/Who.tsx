import { Link } from "wouter";
import css from "./Everybody.module.css";

interface WhoProps {
  readonly who: { readonly athleteId: number; readonly name: string };
  /** What stands under the name, joined by commas. */
  readonly facts: readonly string[];
}

/** An athlete by name, the way to their page, and a fact or two. */
export function Who({ who, facts }: WhoProps) {
  return (
    <span className={css.who}>
      <Link className={css.name} href={`/athletes/${who.athleteId}`}>
        {who.name}
      </Link>
      {facts.length > 0 && <span className={css.facts}>{facts.join(", ")}</span>}
    </span>
  );
}
