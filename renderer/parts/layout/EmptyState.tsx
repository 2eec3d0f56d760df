import type { ReactNode } from "react";
import { Stack } from "../flow/Stack.tsx";
import css from "./EmptyState.module.css";

interface EmptyStateProps {
  /** The missing thing, as a sentence. */
  readonly title: ReactNode;
  /** The way to fill it: the next thing to do, or two or three of them in order. */
  readonly steps?: readonly ReactNode[];
  readonly children?: ReactNode;
  /** The button that does the first step. */
  readonly action?: ReactNode;
}

/** An empty screen that teaches how to fill it. */
export function EmptyState({ title, steps = [], children, action }: EmptyStateProps) {
  return (
    <Stack gap={4} align="start" className={`measure ${css.empty}`}>
      <p className={`lead strong ${css.title}`}>{title}</p>
      {children}
      {steps.length > 0 && (
        <Stack as="ol" gap={2} className={css.steps}>
          {steps.map((step, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: the steps of one place never change their order
            <li key={index}>{step}</li>
          ))}
        </Stack>
      )}
      {action}
    </Stack>
  );
}
