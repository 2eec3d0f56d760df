import { type ReactNode, useId } from "react";
import { Row, Stack } from "../flow/Stack.tsx";
import { Ticks } from "../marks/Ticks.tsx";
import css from "./Panel.module.css";

interface PanelProps {
  readonly children: ReactNode;
  /** The heading (h2); a panel without one is only an area on the floor. */
  readonly title?: ReactNode;
  /** At the right of the heading: a small action or a count. */
  readonly aside?: ReactNode;
  /** alert: something here needs a decision now. */
  readonly tone?: "plain" | "alert";
  /** True for its own paper on the bare floor. */
  readonly paper?: boolean;
}

/** An area marked with corner tape: for the one or two special things of a screen. */
export function Panel({ children, title, aside, tone = "plain", paper = false }: PanelProps) {
  const id = useId();
  return (
    <section
      className={css.panel}
      data-tone={tone}
      data-paper={paper}
      {...(title !== undefined && { "aria-labelledby": id })}
    >
      <Head id={id} title={title} aside={aside} />
      {children}
    </section>
  );
}

/** A part of a screen under a measured line: the usual division of a sheet. */
export function Section({ children, title, aside }: Omit<PanelProps, "tone" | "paper">) {
  const id = useId();
  return (
    <Stack as="section" gap={4} top {...(title !== undefined && { "aria-labelledby": id })}>
      <Ticks />
      <Head id={id} title={title} aside={aside} />
      {children}
    </Stack>
  );
}

function Head({ id, title, aside }: Pick<PanelProps, "title" | "aside"> & { readonly id: string }) {
  if (title === undefined) return null;
  return (
    <Row as="header" gap={4} lines={2} align="baseline" wrap between>
      <h2 id={id}>{title}</h2>
      {aside}
    </Row>
  );
}
