import { useRef } from "react";
import { useTranslation } from "react-i18next";
import { Glance } from "./Glance.tsx";
import { HeldBack } from "./HeldBack.tsx";
import { NothingToShare } from "./NothingToShare.tsx";
import type { Preview } from "./preview.ts";
import { RiskReport } from "./RiskReport.tsx";
import { Step } from "./Step.tsx";
import { WhatLeaves } from "./WhatLeaves.tsx";
import { WriteFile } from "./WriteFile.tsx";

interface BundleStepsProps {
  readonly bundle: Preview;
  /** True while another choice is being worked out: this one can't be written. */
  readonly isOld: boolean;
}

/** The four steps; without a row to share, what to do about it and what stays. */
export function BundleSteps({ bundle, isOld }: BundleStepsProps) {
  const { t } = useTranslation("bundle");
  const word = useRef<HTMLInputElement>(null);

  function goToFile(): void {
    word.current?.scrollIntoView({ block: "center" });
    word.current?.focus({ preventScroll: true });
  }
  if (bundle.rows.length === 0) {
    return (
      <>
        <NothingToShare bundle={bundle} />
        {bundle.held.length > 0 && (
          <Step title={t("stays.title")}>
            <HeldBack bundle={bundle} />
          </Step>
        )}
      </>
    );
  }
  return (
    <>
      <Glance bundle={bundle} onToFile={goToFile} />
      <Step number={1} title={t("risk.title")}>
        <RiskReport bundle={bundle} />
      </Step>
      <Step number={2} title={t("leaves.title")}>
        <WhatLeaves bundle={bundle} />
      </Step>
      <Step number={3} title={t("stays.title")}>
        <HeldBack bundle={bundle} />
      </Step>
      <Step number={4} title={t("write.title")}>
        <WriteFile bundle={bundle} isOld={isOld} wordRef={word} />
      </Step>
    </>
  );
}
