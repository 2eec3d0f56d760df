import { useTranslation } from "react-i18next";
import type { PlaceAmongOthers } from "../../../electron/api/place/among.ts";
import { writeNumber } from "../../words/numbers.ts";
import { Stack } from "../flow/Stack.tsx";
import css from "./PlaceBand.module.css";
import { placeAmong, placeTold } from "./placeTold.ts";

interface PlaceBandProps {
  /** null: too few others to compare with. */
  readonly place: PlaceAmongOthers | null;
}

/**
 * Shows a mark's place in a reference group: how many of a hundred it beats, in words and as a block on a line from 0
 * to 100. Never on the big screen.
 */
export function PlaceBand({ place }: PlaceBandProps) {
  const { t, i18n } = useTranslation("place");
  const words = usePlaceWords();
  return (
    <Stack gap={1}>
      {place === null ? (
        <p className="small quiet">{t("notEnough")}</p>
      ) : (
        <>
          <p className={css.words}>
            {words(place)} <span className="small quiet">{among(place)}</span>
            {place.end !== null && ` ${t(`end.${place.end}`)}`}
          </p>
          <Strip place={place} />
        </>
      )}
    </Stack>
  );

  function among(of: PlaceAmongOthers): string {
    const { origin, ages } = of;
    const number = (count: number) => writeNumber(count, i18n.language);
    const values = { n: number(of.n), halls: number(of.halls ?? 0), origin: origin ?? "" };
    const words = t(`among.${placeAmong(of)}`, values);
    return ages === null ? words : t("ages", { among: words, ...ages });
  }
}

/** Returns a place in words: "Better than about 40 to 60 of 100"; of one that reaches too far, that it can't be told. */
export function usePlaceWords(): (place: Pick<PlaceAmongOthers, "low" | "high">) => string {
  const { t } = useTranslation("place");
  return ({ low, high }) => t(placeTold({ low, high }), { low, high });
}

/** Shows the same as a picture; screen readers get the words beside it. */
function Strip({ place: { low, high } }: { readonly place: PlaceAmongOthers }) {
  return (
    <svg className={css.strip} viewBox="0 0 100 8" preserveAspectRatio="none" aria-hidden="true">
      <line x1="0" x2="100" y1="4" y2="4" />
      {[0, 50, 100].map((at) => (
        <line key={at} x1={at} x2={at} y1="1" y2="7" />
      ))}
      <rect x={low} y="2" width={high - low} height="4" />
    </svg>
  );
}
