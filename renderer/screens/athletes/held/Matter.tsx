import type { ReactNode } from "react";
import { Row, Stack } from "../../../parts/flow/Stack.tsx";
import css from "./Held.module.css";

interface MatterProps {
  readonly title: string;
  readonly what: string;
  readonly children: ReactNode;
}

/** Shows one matter: what to know about it, and the buttons. */
export function Matter({ title, what, children }: MatterProps) {
  return (
    <Stack gap={3} top className={css.matter}>
      <h3>{title}</h3>
      <p>{what}</p>
      <Row gap={3} align="end" wrap>
        {children}
      </Row>
    </Stack>
  );
}
