import { useTranslation } from "react-i18next";
import { Link } from "wouter";
import type { LengthUnit } from "../../../electron/domain/tests/protocol.ts";
import { type TestCode, testCodes } from "../../../electron/domain/tests/registry.ts";
import { Row, Stack } from "../../parts/flow/Stack.tsx";
import { Section } from "../../parts/layout/Panel.tsx";
import { Beside } from "../../parts/marks/Beside.tsx";
import { BigNumber } from "../../parts/marks/BigNumber.tsx";
import { Tag } from "../../parts/marks/Tag.tsx";
import { TestMark } from "../../parts/marks/TestMark.tsx";
import { useUnitWord, useVariantName } from "../../words/marks.ts";
import { useSay } from "../../words/say.ts";
import css from "./AthletePage.module.css";
import type { AthletePage } from "./types.ts";
import { useSince } from "./useSince.ts";

interface TodayProps {
  readonly athlete: AthletePage;
  readonly lengths: LengthUnit;
}

type Told = AthletePage["marks"][number];

/** Shows the five tests in order: the mark or why there is none, and its standing in the athlete's own past. */
export function Today({ athlete, lengths }: TodayProps) {
  const { t } = useTranslation("athletes");
  const { state, bib } = athlete;
  const aside =
    state === null ? undefined : (
      <Tag tone={state === "testing" ? "go" : "quiet"}>{t(`state.${state}`, { bib })}</Tag>
    );
  return (
    <Section title={t("today.title")} aside={aside}>
      {state === null ? (
        <p>{t("today.none")}</p>
      ) : (
        <ol>
          {testCodes.map((test) => (
            <TestRow key={test} test={test} athlete={athlete} lengths={lengths} />
          ))}
        </ol>
      )}
    </Section>
  );
}

function TestRow({ test, athlete, lengths }: TodayProps & { readonly test: TestCode }) {
  const { t } = useTranslation("athletes");
  const marks = athlete.marks.filter((mark) => mark.test === test);
  return (
    <li className={css.test}>
      <Link href={`/station/${test}`} className={css.testName}>
        <TestMark test={test} name="ability" />
      </Link>
      {marks.length > 0 && (
        <Stack gap={1}>
          {marks.map((mark) => (
            <Mark key={mark.variant} mark={mark} lengths={lengths} />
          ))}
        </Stack>
      )}
      {marks.length === 0 && <span className="small quiet">{without()}</span>}
    </li>
  );

  function without(): string {
    if (athlete.leftOut.includes(test)) return t("today.leftOut");
    return athlete.next === test ? t("today.next") : t("today.notYet");
  }
}

function Mark({ mark, lengths }: { readonly mark: Told; readonly lengths: LengthUnit }) {
  const { t } = useTranslation(["athletes", "station"]);
  const say = useSay();
  const since = useSince(mark.test, lengths);
  const unitWord = useUnitWord();
  const variantName = useVariantName();
  const { news, variant } = mark;
  const { number, unit, note } = mark.written;
  return (
    <Row gap={3} lines={1} align="center" wrap>
      {number !== "" && (
        <BigNumber
          size="row"
          number={number}
          unit={[unitWord(unit, number), variantName(variant)].filter((part) => part !== "").join(", ")}
        />
      )}
      {note !== undefined && <span className="small quiet">{say(note)}</span>}
      {news !== null && (
        <Row as="span" gap={3} lines={1} align="center" wrap>
          <Tag tone={news.standing === "best" ? "go" : "quiet"}>{t(`station:standing.${news.standing}`)}</Tag>
          {news.change !== null && news.previousDate !== null && (
            <span className="small quiet">
              {since({ change: news.change, earlier: news.earlier, date: news.previousDate })}
            </span>
          )}
        </Row>
      )}
      <Beside beside={mark.beside} />
    </Row>
  );
}
