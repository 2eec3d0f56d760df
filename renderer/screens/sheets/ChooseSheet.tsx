import { type DragEvent, useRef, useState } from "react";
import { useTranslation } from "react-i18next";
import { bridge } from "../../app/bridge.ts";
import { Button } from "../../parts/Button.tsx";
import css from "./ChooseSheet.module.css";
import { Examples } from "./Examples.tsx";
import type { SheetInHand } from "./useSheet.ts";

const readable = ".csv,.tsv,.txt,text/csv,text/tab-separated-values,text/plain";

/** Where a sheet is chosen or dropped, and what the three kinds look like. */
export function ChooseSheet({ sheet }: { readonly sheet: SheetInHand }) {
  const { t } = useTranslation("sheets");
  const input = useRef<HTMLInputElement>(null);
  const [over, setOver] = useState(false);

  async function choose(): Promise<void> {
    if (bridge === null) return input.current?.click();
    const opened = await bridge.openSheet();
    if (opened === null) return;
    if ("refused" in opened) {
      const key = opened.refused === "too-big" ? "sheets.tooBig" : "sheets:choose.unreadable";
      return sheet.refuse(opened.name, key);
    }
    sheet.bring({ name: opened.name, content: new Blob([new Uint8Array(opened.bytes)]) });
  }

  function bringFile(file: File | undefined): void {
    if (file !== undefined) sheet.bring({ name: file.name, content: file });
  }

  function drop(event: DragEvent): void {
    event.preventDefault();
    setOver(false);
    bringFile(event.dataTransfer.files[0]);
  }

  return (
    <div className={css.choose}>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: dropping is a shortcut; the button does the same for everybody */}
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
        <Button kind="primary" size="large" autoFocus onPress={() => void choose()}>
          {t("choose.button")}
        </Button>
        <p className={css.note}>{t("choose.note")}</p>
        <input
          ref={input}
          className="unseen"
          type="file"
          accept={readable}
          tabIndex={-1}
          aria-hidden="true"
          onChange={(event) => {
            bringFile(event.currentTarget.files?.[0]);
            event.currentTarget.value = "";
          }}
        />
      </div>
      <Examples />
    </div>
  );
}
