import { useTranslation } from "react-i18next";
import { bridge } from "../../app/bridge.ts";
import { useDropped } from "../../app/dropped.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { Row } from "../../parts/flow/Stack.tsx";
import type { Kind } from "../../parts/sheets/sheet.ts";
import type { ChosenSheet } from "./rehearsed.ts";
import css from "./Slot.module.css";
import type { Rehearsal } from "./useRehearsal.ts";

interface SlotProps {
  readonly kind: Kind;
  readonly rehearsal: Rehearsal;
  readonly disabled: boolean;
}

/** Takes one of the three sheets, chosen by dialog or dropped. */
export function Slot({ kind, rehearsal, disabled }: SlotProps) {
  const { t } = useTranslation(["rehearsal", "sheets"]);
  const chosen = rehearsal.choice[kind];

  const zone = useDropped((file) => {
    if (!disabled) rehearsal.choose(kind, { name: file.name, content: file });
  });
  return (
    <div className={css.slot} data-chosen={chosen !== null} {...zone}>
      <h2>
        {t(`sheets:kind.${kind}`)}{" "}
        <span className={css.need}>{kind === "roster" ? t("slot.needed") : t("slot.ifAny")}</span>
      </h2>
      <p className={`quiet ${css.what}`}>{t(`slot.${kind}`)}</p>
      <p className={css.file} role="status">
        {chosen?.name ?? t("slot.drop")}
      </p>
      <Ways kind={kind} rehearsal={rehearsal} disabled={disabled} chosen={chosen} />
    </div>
  );
}

function Ways({ kind, rehearsal, disabled, chosen }: SlotProps & { readonly chosen: ChosenSheet | null }) {
  const { t } = useTranslation(["rehearsal", "sheets"]);
  const name = { kind: t(`sheets:kind.${kind}`) };

  async function open(): Promise<void> {
    const opened = await bridge?.openSheet();
    if (opened === null || opened === undefined) return;
    if ("refused" in opened) {
      const key = opened.refused === "too-big" ? "sheets.tooBig" : "sheets:choose.unreadable";
      return rehearsal.refuse(kind, { key, values: { megabytes: 20 } });
    }
    rehearsal.choose(kind, { name: opened.name, content: new Blob([new Uint8Array(opened.bytes)]) });
  }
  return (
    <Row gap={3} wrap>
      <Button
        kind={kind === "roster" && chosen === null ? "primary" : "quiet"}
        disabled={disabled}
        label={chosen === null ? t("slot.chooseWhich", name) : t("slot.anotherWhich", name)}
        onPress={() => void open()}
      >
        {chosen === null ? t("slot.choose") : t("slot.another")}
      </Button>
      {chosen !== null && (
        <Button
          disabled={disabled}
          label={t("slot.awayWhich", name)}
          onPress={() => rehearsal.choose(kind, null)}
        >
          {t("slot.away")}
        </Button>
      )}
    </Row>
  );
}
