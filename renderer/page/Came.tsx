import { useTranslation } from "react-i18next";
import {
  changeSince,
  type LookedUpPlace,
  type Looking,
  placesOf,
} from "../../electron/domain/reference-table/look-up.ts";
import { groupsOf, type PageData } from "../../electron/domain/reference-table/page-data.ts";
import { typicalError } from "../../electron/domain/statistics/change.ts";
import { levelShown } from "../../electron/domain/statistics/news.ts";
import type { LengthUnit } from "../../electron/domain/tests/protocol.ts";
import { protocolOf } from "../../electron/domain/tests/registry.ts";
import { Button } from "../parts/controls/Button.tsx";
import { Row, Stack } from "../parts/flow/Stack.tsx";
import { BigNumber } from "../parts/marks/BigNumber.tsx";
import { PlaceLine } from "../parts/marks/PlaceLine.tsx";
import { useMarkText, useUnitWord, useWriteChange, useWriteValue } from "../words/marks.ts";
import { writeNumber } from "../words/numbers.ts";
import { useSay } from "../words/say.ts";
import css from "./Page.module.css";
import type { LookedUpTest } from "./useLooking.ts";

interface CameProps {
  readonly looked: LookedUpTest;
  readonly data: PageData;
  readonly who: Looking;
  readonly lengths: LengthUnit;
}

/** What came of one test's fields: the result, its places and its change, or what is to be looked at. */
export function Came(props: CameProps) {
  const { looked } = props;
  const { t } = useTranslation("page");
  const say = useSay();
  const { came } = looked;
  if (came.state === "empty") return null;
  if (came.state === "either") return <Either looked={looked} came={came} />;
  if (came.state === "wrong") {
    return came.whole === undefined ? (
      <p className="quiet">{t("results.incomplete")}</p>
    ) : (
      <p className="alert">{say(came.whole)}</p>
    );
  }
  const { mark, doubts } = came;
  if (mark.state === "incomplete") return <p className="quiet">{t("results.incomplete")}</p>;
  if (mark.state === "unfinished") return <p>{t("results.unfinished")}</p>;
  return (
    <>
      <Shown {...props} value={mark.value} />
      {doubts.map((doubt) => (
        <p key={doubt.key} className="alert">
          {t("results.doubt", { why: say(doubt) })}
        </p>
      ))}
      <Places {...props} value={mark.value} />
      <Change {...props} value={mark.value} />
    </>
  );
}

/** A time whose colon may have been left out: both readings, to choose from. */
function Either({ looked, came }: Pick<CameProps, "looked"> & { readonly came: EitherCame }) {
  const { t } = useTranslation("page");
  const { minutes, seconds } = came.times;
  return (
    <Stack gap={2} align="start">
      <p>{t("results.either", { minutes, seconds })}</p>
      <Row gap={3} wrap>
        {[minutes, seconds].map((text) => (
          <Button key={text} onPress={() => looked.write(came.group, came.field, text)}>
            {text}
          </Button>
        ))}
      </Row>
    </Stack>
  );
}

type EitherCame = Extract<LookedUpTest["came"], { state: "either" }>;
type ShownProps = CameProps & { readonly value: number };

function Shown({ looked: { test }, lengths, value }: ShownProps) {
  const unitWord = useUnitWord();
  const say = useSay();
  const { number, unit, note } = protocolOf(test).write(value, lengths);
  return (
    <BigNumber
      number={number}
      unit={unitWord(unit, number) || undefined}
      {...(note !== undefined && { note: say(note) })}
    />
  );
}

function Places({ looked: { test, variant }, data, who, value }: ShownProps) {
  const { end, places } = placesOf(groupsOf(data, test), test, variant, value, who);
  return (
    <ul className={css.places}>
      {places.map((found) => (
        <PlaceOf key={found.of} found={found} end={end} />
      ))}
    </ul>
  );
}

interface PlaceOfProps {
  readonly found: LookedUpPlace;
  readonly end: "floor" | "ceiling" | null;
}

function PlaceOf({ found: { of, place }, end }: PlaceOfProps) {
  const { t, i18n } = useTranslation("page");
  const inWords = (count: number) => writeNumber(count, i18n.language);
  return (
    <li className={css.place} data-of={of}>
      <h4>{t(`place.of.${of}`)}</h4>
      {place === null ? (
        <p className="small quiet">{t("place.few")}</p>
      ) : (
        <PlaceLine
          place={{ ...place, end }}
          among={t("place.among", {
            ...{ marks: inWords(place.n), halls: inWords(place.halls) },
            when: place.from === place.to ? place.from : `${place.from} – ${place.to}`,
          })}
        />
      )}
    </li>
  );
}

function Change({ looked: { test, earlier }, data, lengths, value }: ShownProps) {
  const { t } = useTranslation(["page", "station"]);
  const writeChange = useWriteChange(test, lengths);
  const writeValue = useWriteValue(test, lengths);
  const markText = useMarkText();
  if (earlier === null || "error" in earlier) return null;
  const news = changeSince(test, earlier.value, value, data.made);
  if (news.change === null || news.verdict === null) return null;
  const error = levelShown(test, typicalError(test, (earlier.value + value) / 2));
  const written = protocolOf(test).write(value, lengths);
  return (
    <Stack gap={1} className={css.change}>
      <h4>{t("change.title")}</h4>
      <p>
        {news.change === 0
          ? t("change.same")
          : t("change.from", {
              ...{ change: writeChange(news.change), earlier: writeValue(earlier.value) },
              now: markText(written),
            })}
      </p>
      {news.change !== 0 && (
        <p className="strong" data-verdict={news.verdict}>
          {t(`station:verdict.${news.verdict}`)}
        </p>
      )}
      <p className="small quiet">{t("change.error", { error: writeValue(error) })}</p>
    </Stack>
  );
}
