import { useTranslation } from "react-i18next";
import { bridge } from "../../app/bridge.ts";
import { useDropped } from "../../app/dropped.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { Row } from "../../parts/flow/Stack.tsx";
import { type Kind, tooBig, unreadable } from "../../parts/sheets/sheet.ts";
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
    <div className={css.slot} data-chosen={chosen.length > 0} {...zone}>
      <h2>
        {t(`sheets:kind.${kind}`)}{" "}
        <span className={`small quiet ${css.need}`}>
          {kind === "roster" ? t("slot.needed") : t("slot.ifAny")}
        </span>
      </h2>
      <p className={`quiet ${css.what}`}>{t(`slot.${kind}`)}</p>
      <div className="one-line strong" role="status">
        {chosen.length === 0 ? (
          t("slot.drop")
        ) : (
          <Files kind={kind} rehearsal={rehearsal} disabled={disabled} />
        )}
      </div>
      <Ways kind={kind} rehearsal={rehearsal} disabled={disabled} />
    </div>
  );
}

/** The files that are chosen, each with the way out. */
function Files({ kind, rehearsal, disabled }: SlotProps) {
  const { t } = useTranslation(["rehearsal", "sheets"]);
  const name = t(`sheets:kind.${kind}`);
  const files = rehearsal.choice[kind];
  return (
    <ul>
      {files.map((file, place) => (
        <li key={file.name}>
          <Row gap={3} align="center" between wrap>
            <span>{file.name}</span>
            <Button
              disabled={disabled}
              label={
                files.length > 1 ? `${t("slot.away")} ${file.name}` : t("slot.awayWhich", { kind: name })
              }
              onPress={() => rehearsal.takeOut(kind, place)}
            >
              {t("slot.away")}
            </Button>
          </Row>
        </li>
      ))}
    </ul>
  );
}

function Ways({ kind, rehearsal, disabled }: SlotProps) {
  const { t } = useTranslation(["rehearsal", "sheets"]);
  const name = { kind: t(`sheets:kind.${kind}`) };
  const isEmpty = rehearsal.choice[kind].length === 0;

  async function open(): Promise<void> {
    const opened = await bridge?.openSheet();
    if (opened === null || opened === undefined) return;
    if ("refused" in opened)
      return rehearsal.refuse(kind, opened.refused === "too-big" ? tooBig : unreadable);
    rehearsal.choose(kind, { name: opened.name, content: new Blob([new Uint8Array(opened.bytes)]) });
  }
  return (
    <div>
      <Button
        kind={kind === "roster" && isEmpty ? "primary" : "quiet"}
        disabled={disabled}
        label={isEmpty ? t("slot.chooseWhich", name) : t("slot.anotherWhich", name)}
        onPress={() => void open()}
      >
        {isEmpty ? t("slot.choose") : t("slot.another")}
      </Button>
    </div>
  );
}
