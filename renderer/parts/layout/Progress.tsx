import type { ReactNode } from "react";
import { Label } from "react-aria-components/Label";
import { ProgressBar } from "react-aria-components/ProgressBar";
import { Row } from "../flow/Stack.tsx";
import css from "./Progress.module.css";

interface ProgressProps {
  readonly label: string;
  /** Progress out of `total`; null while unknown. */
  readonly done: number | null;
  readonly total: number;
  /** The figures in words ("312 of 5,000 rows"), shown and read out. */
  readonly words?: ReactNode;
}

/** A tape that is pulled out as work goes on: for anything that takes over half a second. */
export function Progress({ label, done, total, words }: ProgressProps) {
  return (
    <ProgressBar
      className={css.progress ?? ""}
      maxValue={Math.max(total, 1)}
      value={done ?? 0}
      isIndeterminate={done === null}
    >
      {({ percentage = 0, isIndeterminate }) => (
        <>
          <Row gap={4} lines={1} wrap between>
            <Label className="strong">{label}</Label>
            <span>{words}</span>
          </Row>
          <div className={css.track} data-waiting={isIndeterminate}>
            <div className={css.tape} style={{ width: isIndeterminate ? "12%" : `${percentage}%` }} />
          </div>
        </>
      )}
    </ProgressBar>
  );
}
