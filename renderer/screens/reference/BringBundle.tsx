import { type DragEvent, useRef, useState } from "react";
import { useTranslation } from "react-i18next";
import { bridge } from "../../app/bridge.ts";
import { Button } from "../../parts/Button.tsx";
import css from "./BringBundle.module.css";
import { type BundleInHand, tooBig } from "./useBundle.ts";

/** Where a bundle is chosen or dropped. */
export function BringBundle({ bundle }: { readonly bundle: BundleInHand }) {
  const { t } = useTranslation("reference");
  const input = useRef<HTMLInputElement>(null);
  const [over, setOver] = useState(false);

  async function choose(): Promise<void> {
    if (bridge === null) return input.current?.click();
    const opened = await bridge.openSheet();
    if (opened === null) return;
    if ("refused" in opened) {
      const unreadable = { key: "reference:choose.unreadable" };
      return bundle.refuse(opened.name, opened.refused === "too-big" ? tooBig : unreadable);
    }
    bundle.bring(opened.name, new Blob([new Uint8Array(opened.bytes)]));
  }

  function bringFile(file: File | undefined): void {
    if (file !== undefined) bundle.bring(file.name, file);
  }

  function drop(event: DragEvent): void {
    event.preventDefault();
    setOver(false);
    bringFile(event.dataTransfer.files[0]);
  }

  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: dropping is a shortcut; the button does the same for everybody
    <div
      className={css.zone}
      data-over={over}
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={drop}
    >
      <p className={css.title}>{t("choose.drop")}</p>
      <Button kind="primary" size="large" onPress={() => void choose()}>
        {t("choose.button")}
      </Button>
      <p className={css.note}>{t("choose.note")}</p>
      <input
        ref={input}
        className="unseen"
        type="file"
        accept=".zip,application/zip"
        tabIndex={-1}
        aria-hidden="true"
        onChange={(event) => {
          bringFile(event.currentTarget.files?.[0]);
          event.currentTarget.value = "";
        }}
      />
    </div>
  );
}
