import { createElement, type HTMLAttributes } from "react";
import css from "./Stack.module.css";

/** Attributes of the element, and the layout of its children. */
interface LayoutProps extends HTMLAttributes<HTMLElement> {
  /** The element; a div unless the content is a list, a section or the like. */
  readonly as?: keyof HTMLElementTagNameMap;
  /** Space between the children: the token --space-1 and so on. None if left out. */
  readonly gap?: 1 | 2 | 3 | 4 | 5 | 6 | 7;
}

interface StackProps extends LayoutProps {
  /** start: children are as wide as they need. Without it they are as wide as the stack. */
  readonly align?: "start";
  /** Keeps the children at the top of a taller stack. */
  readonly top?: boolean;
}

/** Children stacked vertically. */
export function Stack({ align, top, ...props }: StackProps) {
  return layOut("stack", [align, top && "top"], props);
}

interface RowProps extends LayoutProps {
  /** Space between lines, where it differs from `gap`: the token --space-1 and so on. */
  readonly lines?: 0 | 1 | 2 | 3 | 4;
  readonly align?: "start" | "center" | "end" | "baseline";
  readonly wrap?: boolean;
  /** Puts the remaining space between the children. */
  readonly between?: boolean;
}

/** Children side by side. */
export function Row({ lines, align, wrap, between, ...props }: RowProps) {
  const ways = [lines !== undefined && `lines-${lines}`, align, wrap && "wrap", between && "between"];
  return layOut("row", ways, props);
}

function layOut(
  kind: "stack" | "row",
  ways: readonly (string | false | undefined)[],
  { as = "div", gap, className, ...rest }: LayoutProps,
) {
  const names = [kind, gap !== undefined && `gap-${gap}`, ...ways].filter((name) => typeof name === "string");
  return createElement(as, {
    ...rest,
    className: [...names.map((name) => css[name]), className].join(" ").trim(),
  });
}
