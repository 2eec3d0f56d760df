import { useTranslation } from "react-i18next";
import type { PlaceAmongOthers } from "../../../electron/api/place/among.ts";
import { writeNumber } from "../../words/numbers.ts";
import { PlaceLine } from "./PlaceLine.tsx";
import { placeAmong } from "./placeTold.ts";

interface PlaceBandProps {
  /** null: too few others to compare with. */
  readonly place: PlaceAmongOthers | null;
}

/** Shows a mark's place in a reference group. Never on the big screen. */
export function PlaceBand({ place }: PlaceBandProps) {
  const { t, i18n } = useTranslation("place");
  if (place === null) return <p className="small quiet">{t("notEnough")}</p>;
  return <PlaceLine place={place} among={among(place)} />;

  function among(of: PlaceAmongOthers): string {
    const { origin, ages } = of;
    const number = (count: number) => writeNumber(count, i18n.language);
    const values = { n: number(of.n), halls: number(of.halls ?? 0), origin: origin ?? "" };
    const words = t(`among.${placeAmong(of)}`, values);
    return ages === null ? words : t("ages", { among: words, ...ages });
  }
}
