import { useState } from "react";
import { useTranslation } from "react-i18next";
import type { Hall } from "../../../../electron/domain/plan/hall.ts";
import type { WhatIf } from "../../../../electron/domain/plan/told.ts";
import { useTestWords } from "../../../app/testWords.ts";
import { Button } from "../../../parts/controls/Button.tsx";
import { Stack } from "../../../parts/flow/Stack.tsx";
import { BigNumber } from "../../../parts/marks/BigNumber.tsx";
import { TestMark } from "../../../parts/marks/TestMark.tsx";
import css from "../Plan.module.css";
import { asSentence, useChangeWords } from "../words.ts";
import { bestOfStations, minutesOf, roomsOf, worthOf } from "./worth.ts";

/** So many changes of a kind are shown before somebody asks for all. */
const mostShown = 4;

interface GainsProps {
  readonly whatIfs: readonly WhatIf[];
  readonly hall: Pick<Hall, "stations">;
}

/** Lists what one change would save, then what two would together, most first; what saves nothing is said in one line. */
export function Gains({ whatIfs, hall }: GainsProps) {
  const { t, i18n } = useTranslation("plan");
  const changeWords = useChangeWords(hall);
  const testWord = useTestWords();
  const { helps, nothing } = worthOf(whatIfs);
  const most = Math.max(1, ...helps.map(({ saved }) => saved.until));
  const alone = helps.filter(({ changes }) => changes.length === 1);
  const together = helps.filter(({ changes }) => changes.length > 1);
  const { rooms, others } = roomsOf(nothing);
  const forNothing = [
    ...rooms.map((test) => t("change.room", { where: testWord(test, "inText") })),
    ...others.map(({ changes }) => changeWords(changes)),
  ].map((text) => asSentence(text, i18n.language));
  return (
    <Stack gap={4} data-gains>
      {helps.length === 0 && <p className="lead">{t("gains.none")}</p>}
      <Group title={t("gains.alone")} whatIfs={alone} most={most} hall={hall} />
      <Group title={t("gains.together")} whatIfs={together} most={most} hall={hall} />
      {nothing.length > 0 && (
        <Stack gap={1} className="measure">
          <h3>{t("gains.nothing")}</h3>
          <p>{forNothing.join(" · ")}</p>
        </Stack>
      )}
    </Stack>
  );
}

interface GroupProps extends GainsProps {
  readonly title: string;
  /** The longest tape, in seconds. */
  readonly most: number;
}

function Group({ title, whatIfs, most, hall }: GroupProps) {
  const { t } = useTranslation("plan");
  const changeWords = useChangeWords(hall);
  const [all, setAll] = useState(false);
  if (whatIfs.length === 0) return null;
  const shown = all ? whatIfs : bestOfStations(whatIfs).slice(0, mostShown);
  const hidden = whatIfs.length - shown.length;
  return (
    <Stack gap={1}>
      <h3>{title}</h3>
      <ol>
        {shown.map((whatIf) => (
          <Gain key={changeWords(whatIf.changes)} whatIf={whatIf} most={most} hall={hall} />
        ))}
      </ol>
      {hidden > 0 && (
        <div>
          <Button onPress={() => setAll(true)}>{t("gains.more", { count: hidden })}</Button>
        </div>
      )}
    </Stack>
  );
}

interface GainProps extends Pick<GainsProps, "hall"> {
  readonly whatIf: WhatIf;
  readonly most: number;
}

/** Shows one gain as minutes, as words, and as a tape that is pulled out with a line over its spread. */
function Gain({ whatIf: { changes, saved }, most, hall }: GainProps) {
  const { t, i18n } = useTranslation("plan");
  const changeWords = useChangeWords(hall);
  const count = minutesOf(saved.middle);
  const between = ({ from, until }: WhatIf["saved"]) =>
    minutesOf(from) < 0
      ? t("gains.maybeLater", { later: -minutesOf(from), until: minutesOf(until) })
      : t("gains.between", { from: minutesOf(from), until: minutesOf(until) });
  const part = (seconds: number) => `${(100 * Math.max(0, seconds)) / most}%`;
  return (
    <li className={css.gain}>
      <div className={css.saved}>
        <BigNumber size="row" number={String(count)} unit={t("gains.earlier")} />
      </div>
      <div>
        <p>
          <Marks changes={changes} />
          <strong>{asSentence(changeWords(changes), i18n.language)}</strong>{" "}
          <span className="quiet">{between(saved)}</span>
        </p>
        <div className={css.track} aria-hidden="true">
          <span className={css.tape} style={{ width: part(saved.middle) }} />
          <span
            className={css.spread}
            style={{ left: part(saved.from), width: part(saved.until - Math.max(0, saved.from)) }}
          />
        </div>
        {(["rest", "middle", "waves"] as const)
          .filter((caution) => changes.some(({ kind }) => kind === caution))
          .map((caution) => (
            <p key={caution} className="small quiet">
              {t(`gains.${caution}`)}
            </p>
          ))}
      </div>
    </li>
  );
}

/** The stations that are changed, for the eye: the words name them. */
function Marks({ changes }: Pick<WhatIf, "changes">) {
  return changes.map((change) =>
    "test" in change ? (
      <span key={`${change.kind} ${change.test}`} aria-hidden="true">
        <TestMark test={change.test} size="small" />{" "}
      </span>
    ) : null,
  );
}
