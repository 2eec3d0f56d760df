import { useRef } from "react";
import { useTranslation } from "react-i18next";
import { Glance } from "./Glance.tsx";
import { HeldBack } from "./HeldBack.tsx";
import { NothingToShare } from "./NothingToShare.tsx";
import type { LogEntry, Preview } from "./preview.ts";
import { Step } from "./Step.tsx";
import { WhatLeaves } from "./WhatLeaves.tsx";
import { WriteFile } from "./WriteFile.tsx";

interface BundleStepsProps {
  readonly bundle: Preview;
  readonly log: readonly LogEntry[];
}

/** The three steps; without a row to share, what to do about it and what stays. */
export function BundleSteps({ bundle, log }: BundleStepsProps) {
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
      <Step number={1} title={t("leaves.title")}>
        <WhatLeaves bundle={bundle} />
      </Step>
      <Step number={2} title={t("stays.title")}>
        <HeldBack bundle={bundle} />
      </Step>
      <Step number={3} title={t("write.title")}>
        <WriteFile bundle={bundle} log={log} wordRef={word} />
      </Step>
    </>
  );
}
