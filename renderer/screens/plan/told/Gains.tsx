import { useState } from "react";
import { useTranslation } from "react-i18next";
import { useTestWords } from "../../../app/testWords.ts";
import { Button } from "../../../parts/controls/Button.tsx";
import { Stack } from "../../../parts/flow/Stack.tsx";
import { BigNumber } from "../../../parts/marks/BigNumber.tsx";
import { TestMark } from "../../../parts/marks/TestMark.tsx";
import css from "../Plan.module.css";
import type { Planned, WhatIf } from "../types.ts";
import { asSentence, useChangeWords } from "../words.ts";
import { LeagueTimes } from "./LeagueTimes.tsx";
import { bestOfStations, isEarlier, minutesOf, roomsOf, worthOf } from "./worth.ts";

/** So many changes of a kind are shown before somebody asks for all. */
const mostShown = 4;

interface GainsProps {
  readonly whatIfs: readonly WhatIf[];
  readonly planned: Planned;
}

/** Lists what one change would save, then what two would together, most first; what saves nothing is said in one line. */
export function Gains({ whatIfs, planned }: GainsProps) {
  const { t, i18n } = useTranslation("plan");
  const changeWords = useChangeWords(planned);
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
      <Group title={t("gains.alone")} whatIfs={alone} most={most} planned={planned} />
      <Group title={t("gains.together")} whatIfs={together} most={most} planned={planned} />
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

function Group({ title, whatIfs, most, planned }: GroupProps) {
  const { t } = useTranslation("plan");
  const changeWords = useChangeWords(planned);
  const [all, setAll] = useState(false);
  if (whatIfs.length === 0) return null;
  const shown = all ? whatIfs : bestOfStations(whatIfs).filter(isShownFirst);
  const hidden = whatIfs.length - shown.length;
  return (
    <Stack gap={1}>
      <h3>{title}</h3>
      <ol>
        {shown.map((whatIf) => (
          <Gain key={changeWords(whatIf.changes)} whatIf={whatIf} most={most} planned={planned} />
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

/** Times for the leagues cost nothing, and are never among the hidden. */
function isShownFirst({ changes }: WhatIf, place: number): boolean {
  return place < mostShown || (changes.length === 1 && changes[0]?.kind === "waves");
}

interface GainProps extends Pick<GainsProps, "planned"> {
  readonly whatIf: WhatIf;
  readonly most: number;
}

/** Shows one gain as minutes and as words; where the day ends earlier, as a tape too. */
function Gain({ whatIf, most, planned }: GainProps) {
  const { t, i18n } = useTranslation("plan");
  const changeWords = useChangeWords(planned);
  const { changes, saved, waves } = whatIf;
  const between = ({ from, until }: WhatIf["saved"]) =>
    minutesOf(from) < 0
      ? t("gains.maybeLater", { later: -minutesOf(from), until: minutesOf(until) })
      : t("gains.between", { from: minutesOf(from), until: minutesOf(until) });
  const ends = isEarlier(whatIf);
  const calmer = minutesOf(waves?.waitAsGiven ?? 0) - minutesOf(waves?.wait ?? 0);
  return (
    <li className={css.gain}>
      <div className={css.saved}>
        <BigNumber
          size="row"
          number={ends ? String(minutesOf(saved.middle)) : `−${calmer}`}
          unit={t(ends ? "gains.earlier" : "gains.waiting")}
        />
      </div>
      <div>
        <p>
          <Marks changes={changes} />
          <strong>{asSentence(changeWords(changes), i18n.language)}</strong>{" "}
          {ends && <span className="quiet">{between(saved)}</span>}
        </p>
        {ends && <Tape saved={saved} most={most} />}
        {(["rest", "middle"] as const)
          .filter((caution) => changes.some(({ kind }) => kind === caution))
          .map((caution) => (
            <p key={caution} className="small quiet">
              {t(`gains.${caution}`)}
            </p>
          ))}
        <LeagueTimes whatIf={whatIf} planned={planned} />
      </div>
    </li>
  );
}

/** A gain as a tape that is pulled out, with a line over its spread. */
function Tape({ saved, most }: Pick<WhatIf, "saved"> & Pick<GainProps, "most">) {
  const part = (seconds: number) => `${(100 * Math.max(0, seconds)) / most}%`;
  return (
    <div className={css.track} aria-hidden="true">
      <span className={css.tape} style={{ width: part(saved.middle) }} />
      <span
        className={css.spread}
        style={{ left: part(saved.from), width: part(saved.until - Math.max(0, saved.from)) }}
      />
    </div>
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
