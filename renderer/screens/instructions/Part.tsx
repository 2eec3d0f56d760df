import { type ReactNode, useId } from "react";
import css from "./Sheet.module.css";

/** Lays out a part of a page under its heading. */
export function Part({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  const id = useId();
  return (
    <section className={css.part} aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      {children}
    </section>
  );
}

interface PointsProps {
  readonly lines: readonly string[];
  /** boxes: to tick off. numbers: in this order. */
  readonly look?: "dots" | "boxes" | "numbers";
}

/** Lists sentences, one per line. */
export function Points({ lines, look = "dots" }: PointsProps) {
  const List = look === "numbers" ? "ol" : "ul";
  return (
    <List className={css.points} data-look={look}>
      {lines.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </List>
  );
}
