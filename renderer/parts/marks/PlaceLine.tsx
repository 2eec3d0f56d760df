import { useTranslation } from "react-i18next";
import { Stack } from "../flow/Stack.tsx";
import css from "./PlaceBand.module.css";
import { placeTold } from "./placeTold.ts";

/** Between how many of a hundred a mark lies. */
interface Ends {
  readonly low: number;
  readonly high: number;
}

interface PlaceLineProps {
  readonly place: Ends & {
    /** The end of the test that the mark is stuck at, beyond which it tells no more. */
    readonly end: "floor" | "ceiling" | null;
  };
  /** Among how many and whom, in words. */
  readonly among: string;
}

/** Says and shows how many of a hundred a mark beats: in words, and as a block on a line from 0 to 100. */
export function PlaceLine({ place, among }: PlaceLineProps) {
  const { t } = useTranslation("place");
  const words = usePlaceWords();
  return (
    <Stack gap={1}>
      <p className={css.words}>
        {words(place)} <span className="small quiet">{among}</span>
        {place.end !== null && ` ${t(`end.${place.end}`)}`}
      </p>
      <Strip place={place} />
    </Stack>
  );
}

/** Returns a place in words: "Better than about 40 to 60 of 100"; of one that reaches too far, that it can't be told. */
export function usePlaceWords(): (place: Ends) => string {
  const { t } = useTranslation("place");
  return ({ low, high }) => t(placeTold({ low, high }), { low, high });
}

/** Shows the same as a picture; screen readers get the words beside it. */
function Strip({ place: { low, high } }: { readonly place: Ends }) {
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
