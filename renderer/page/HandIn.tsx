import { useState } from "react";
import { useTranslation } from "react-i18next";
import { notTold } from "../../electron/domain/privacy/hierarchy.ts";
import {
  type ExactResult,
  handInId,
  makeHandIn,
  writeHandIn,
} from "../../electron/domain/reference-table/hand-in.ts";
import { handInCategories } from "../../electron/domain/reference-table/hand-in-coding.ts";
import type { Looking } from "../../electron/domain/reference-table/look-up.ts";
import { Button } from "../parts/controls/Button.tsx";
import { Section } from "../parts/layout/Panel.tsx";
import css from "./Page.module.css";
import type { LookedUpTest } from "./useLooking.ts";

interface HandInProps {
  readonly tests: readonly LookedUpTest[];
  readonly who: Looking;
}

interface Shown {
  readonly id: string;
  /** What the id was drawn for: something else gets another. */
  readonly of: string;
}

/** Makes a file to hand in, and shows it before it is saved; nothing leaves by itself. */
export function HandInPart({ tests, who }: HandInProps) {
  const { t } = useTranslation("page");
  const [shown, setShown] = useState<Shown | null>(null);
  const [saved, setSaved] = useState<string | null>(null);
  const results = tests.flatMap(resultOf);
  const fileOf = (id: string) => writeHandIn(makeHandIn({ id, ...aboutOf(who) }, results));
  const of = JSON.stringify([results, who]);
  const isShown = shown?.of === of && results.length > 0;
  const name = `hand-in-${shown?.id ?? ""}.json`;
  const isDoubtful = tests.some(({ came }) => came.state !== "empty" && !isClear(came));
  return (
    <Section title={t("handIn.title")}>
      {(["lead", "what", "counts"] as const).map((line) => (
        <p key={line} className="measure">
          {t(`handIn.${line}`)}
        </p>
      ))}
      {results.length === 0 && <p className="quiet">{t("handIn.nothing")}</p>}
      {results.length > 0 && isDoubtful && <p className="alert">{t("handIn.doubts")}</p>}
      <div>
        <Button disabled={results.length === 0} onPress={() => setShown({ id: drawId(), of })}>
          {t("handIn.show")}
        </Button>
      </div>
      {isShown && (
        <>
          <p className="strong">{t("handIn.exactly")}</p>
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what is wider than a phone is scrolled by keys, too */}
          <pre className={css.file} tabIndex={0}>
            {fileOf(shown.id)}
          </pre>
          <div>
            <Button
              kind="primary"
              onPress={() => {
                saveText(name, fileOf(shown.id));
                setSaved(name);
              }}
            >
              {t("handIn.save")}
            </Button>
          </div>
        </>
      )}
      <p role="status">{isShown && saved === name && t("handIn.saved", { name })}</p>
    </Section>
  );
}

function isClear(came: LookedUpTest["came"]): boolean {
  return came.state === "read" && came.mark.state !== "incomplete" && came.doubts.length === 0;
}

function resultOf({ test, variant, fingerprint, came }: LookedUpTest): ExactResult[] {
  if (came.state !== "read" || came.mark.state !== "complete") return [];
  return [{ test, variant, fingerprint, value: came.mark.value }];
}

function aboutOf({ category, ageBand }: Looking) {
  return {
    category: handInCategories.find((each) => each === category) ?? notTold,
    ageBand: ageBand ?? notTold,
  };
}

function drawId(): string {
  return handInId(crypto.getRandomValues(new Uint8Array(16)));
}

/** Saves a text as a file among the downloads, without asking any server. */
function saveText(name: string, text: string): void {
  const address = URL.createObjectURL(new Blob([text], { type: "application/json" }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  // The browser has read it by then.
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}
