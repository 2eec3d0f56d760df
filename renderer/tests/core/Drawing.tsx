import { useTranslation } from "react-i18next";
import { type CoreParameters, stageAt } from "../../../electron/domain/tests/core/protocol.ts";
import { stagesOf } from "./rules.ts";
import { CoreStages } from "./Stages.tsx";

/** Draws a round of stages and the first of the next: they go on without end. */
export function Drawing({ parameters }: { readonly parameters: CoreParameters }) {
  const { t } = useTranslation("core");
  return (
    <>
      <figcaption>{t("drawing.title")}</figcaption>
      <CoreStages stages={[...stagesOf(parameters), stageAt(parameters, parameters.cycle)]} />
    </>
  );
}
