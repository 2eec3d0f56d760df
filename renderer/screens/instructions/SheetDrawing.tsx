import { useTranslation } from "react-i18next";
import { type Stage, stageAt } from "../../../electron/domain/tests/core/protocol.ts";
import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import { type ParametersOf, protocols } from "../../../electron/domain/tests/registry.ts";
import { CircuitOrder } from "../../parts/drawings/CircuitOrder.tsx";
import { PlankStages } from "../../parts/drawings/PlankStages.tsx";
import { PushUpForm } from "../../parts/drawings/PushUpForm.tsx";
import { QuadrantCross } from "../../parts/drawings/QuadrantCross.tsx";
import { WallReach } from "../../parts/drawings/WallReach.tsx";
import { stagesOf } from "../../words/ruleNumbers.ts";
import css from "./Sheet.module.css";

interface SheetDrawingProps {
  readonly test: TestCode;
  /** The parameters of the day. */
  readonly parameters: unknown;
}

/** The drawing of a station's page. */
export function SheetDrawing({ test, parameters }: SheetDrawingProps) {
  return (
    <figure className={css.figure} data-test={test}>
      <Drawing test={test} parameters={parameters} />
    </figure>
  );
}

/** A round of stages and the first of the next: they go on without end. */
function onceAround(parameters: ParametersOf<"core">): readonly Stage[] {
  return [...stagesOf(parameters), stageAt(parameters, parameters.cycle)];
}

function Drawing({ test, parameters }: SheetDrawingProps) {
  const { t } = useTranslation("instructions");
  switch (test) {
    case "push-up":
      return <PushUpForm />;
    case "agility": {
      const { crossSize } = protocols.agility.parameters.parse(parameters);
      return (
        <>
          <QuadrantCross direction="cw" size={crossSize} />
          <QuadrantCross direction="ccw" size={crossSize} />
        </>
      );
    }
    case "vertical":
      return <WallReach />;
    case "core":
      return (
        <>
          <figcaption>{t("drawing.plank.title")}</figcaption>
          <PlankStages stages={onceAround(protocols.core.parameters.parse(parameters))} />
        </>
      );
    case "endurance":
      return <CircuitOrder parameters={protocols.endurance.parameters.parse(parameters)} />;
  }
}
