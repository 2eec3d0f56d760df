import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import { faceOf, readParameters } from "../../tests/registry.ts";
import css from "./Sheet.module.css";

interface SheetDrawingProps {
  readonly test: TestCode;
  /** The parameters of the day. */
  readonly parameters: unknown;
}

/** Shows the drawing of a station's page. */
export function SheetDrawing({ test, parameters }: SheetDrawingProps) {
  const { layout, Drawing } = faceOf(test).drawing;
  return (
    <figure className={css.figure} data-test={test} data-layout={layout}>
      <Drawing parameters={readParameters(test, parameters)} />
    </figure>
  );
}
