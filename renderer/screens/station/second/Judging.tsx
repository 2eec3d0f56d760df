import { useState } from "react";
import { useTranslation } from "react-i18next";
import type { TestCode } from "../../../../electron/domain/tests/registry.ts";
import { Button } from "../../../parts/controls/Button.tsx";
import { Choice } from "../../../parts/controls/Choice.tsx";
import { Row, Stack } from "../../../parts/flow/Stack.tsx";
import { Section } from "../../../parts/layout/Panel.tsx";
import { Tag } from "../../../parts/marks/Tag.tsx";
import { useWriteSeen } from "../../../tests/seen.ts";
import { useLengthUnit } from "../../../words/lengths.ts";
import type { StationPerson } from "../types.ts";
import { ByBib } from "./ByBib.tsx";
import { EnterSeen } from "./EnterSeen.tsx";
import type { StudyToRead, ToRead } from "./types.ts";
import type { Read } from "./useReading.ts";

interface JudgingProps {
  readonly test: TestCode;
  readonly view: ToRead;
  readonly study: StudyToRead;
}

/** Takes readings one after the other: somebody at the station or a bib, then what was seen. */
export function Judging({ test, view, study }: JudgingProps) {
  const { t } = useTranslation("secondJudge");
  const [chosen, setChosen] = useState(study.series[0]?.position ?? 0);
  const [who, setWho] = useState<StationPerson | null>(null);
  const [last, setLast] = useState<Read | null>(null);
  const series = study.series.find(({ position }) => position === chosen);
  if (series === undefined) return null;
  const { position, judge, read } = series;
  return (
    <>
      {study.series.length > 1 && (
        <Choice
          label={t("whose")}
          options={study.series.map((each) => ({ value: String(each.position), label: each.judge }))}
          value={String(position)}
          onChange={(picked) => setChosen(Number(picked))}
        />
      )}
      {who === null ? (
        <>
          <p className="quiet measure">{t("lead")}</p>
          <AtStation people={view.people} position={position} onPick={setWho} />
          <ByBib onFound={setWho} />
        </>
      ) : (
        <EnterSeen
          key={`${position} ${who.athleteId}`}
          {...{ test, who, position, study }}
          parameters={view.parameters}
          onLeave={() => setWho(null)}
          onDone={(done) => {
            setLast(done);
            setWho(null);
          }}
        />
      )}
      {last !== null && who === null && <Last test={test} read={last} />}
      <p>{t("read", { judge, count: read })}</p>
    </>
  );
}

interface AtStationProps {
  readonly people: ToRead["people"];
  readonly position: number;
  readonly onPick: (who: StationPerson) => void;
}

/** Lists who is in a lane or called, by bib and name as at the station. */
function AtStation({ people, position, onPick }: AtStationProps) {
  const { t } = useTranslation("secondJudge");
  return (
    <Section title={t("at.title")}>
      {people.length === 0 && <p className="quiet">{t("at.nobody")}</p>}
      <Row as="ul" gap={3} lines={3} wrap>
        {people.map(({ who, read }) => {
          const name = t("at.pick", { bib: who.bib, name: who.name });
          return (
            <li key={who.athleteId}>
              {read.includes(position) ? (
                <Row gap={2} align="center">
                  {name} <Tag>{t("at.done")}</Tag>
                </Row>
              ) : (
                <Button size="large" onPress={() => onPick(who)}>
                  {name}
                </Button>
              )}
            </li>
          );
        })}
      </Row>
    </Section>
  );
}

/** Says what was entered last: saved, or waiting on this device. */
function Last({ test, read: { who, seen, waits } }: { readonly test: TestCode; readonly read: Read }) {
  const { t } = useTranslation("secondJudge");
  const writeSeen = useWriteSeen();
  const { lengths } = useLengthUnit();
  const value = seen.map((each) => writeSeen(test, each, lengths)).join(" · ");
  return (
    <Stack gap={1} role="status">
      <p className="strong">{t(waits ? "waits" : "saved", { bib: who.bib, name: who.name, value })}</p>
      <p className="small quiet">{t("wrong")}</p>
    </Stack>
  );
}
