import { useTranslation } from "react-i18next";
import { useStanding } from "../../../app/standing.tsx";
import { Button } from "../../../parts/controls/Button.tsx";
import { Row } from "../../../parts/flow/Stack.tsx";
import type { HeatView } from "../../../tests/live/types.ts";
import type { ShownHolder } from "./sync/useHeatView.ts";

interface OtherHeatsProps {
  readonly others: HeatView["others"];
  readonly shown: ShownHolder;
  readonly onShow: (holder: ShownHolder) => void;
}

/** Lists who else holds a heat of this test, and whom they have in their lanes; the organiser can show each. */
export function OtherHeats({ others, shown, onShow }: OtherHeatsProps) {
  const { t } = useTranslation("live");
  const isOrganiser = useStanding().post.role === "organiser";
  if (others.length === 0 && shown === undefined) return null;
  return (
    <Row as="section" gap={3} align="baseline" wrap aria-label={t("others.title")}>
      {shown !== undefined && <Button onPress={() => onShow(undefined)}>{t("others.back")}</Button>}
      {others.map((other) => (
        <OtherHeat key={other.heatId} other={other} {...(isOrganiser && { onShow })} />
      ))}
    </Row>
  );
}

interface OtherHeatProps {
  readonly other: HeatView["others"][number];
  /** Missing where this window may not look at it. */
  readonly onShow?: (holder: ShownHolder) => void;
}

function OtherHeat({ other: { holder, device, bibs }, onShow }: OtherHeatProps) {
  const { t } = useTranslation("live");
  const who = device ?? t(holder === null ? "others.table" : "others.gone");
  const key = bibs.length === 0 ? "others.empty" : "others.heat";
  return (
    <>
      <span>{t(key, { who, bibs: bibs.join(", ") })}</span>
      {onShow !== undefined && holder !== null && (
        <Button onPress={() => onShow(holder)}>{t("others.look", { who })}</Button>
      )}
    </>
  );
}
