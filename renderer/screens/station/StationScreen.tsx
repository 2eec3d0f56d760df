import { useQuery } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import type { LengthUnit } from "../../../electron/domain/tests/protocol.ts";
import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import { useTRPC } from "../../app/client.tsx";
import { useKeys } from "../../app/keys.ts";
import { useTestWords } from "../../app/testWords.ts";
import { Button, LinkButton } from "../../parts/controls/Button.tsx";
import { Choice } from "../../parts/controls/Choice.tsx";
import { KeyHint } from "../../parts/controls/KeyHint.tsx";
import { Row } from "../../parts/flow/Stack.tsx";
import { Answer } from "../../parts/layout/Answer.tsx";
import { EmptyState } from "../../parts/layout/EmptyState.tsx";
import { Screen } from "../../parts/layout/Screen.tsx";
import { Tag } from "../../parts/marks/Tag.tsx";
import { TestMark } from "../../parts/marks/TestMark.tsx";
import type { LiveHeat } from "../../tests/live/types.ts";
import { useLengthUnit } from "../../words/lengths.ts";
import { CorrectDialog } from "./CorrectDialog.tsx";
import { type Corrections, useCorrections } from "./drafts.ts";
import noticeCss from "./entry/Notice.module.css";
import { LiveStation } from "./live/LiveStation.tsx";
import { type Mode, useMode } from "./live/mode.ts";
import { useHeatAtHand } from "./live/sync/useHeatView.ts";
import { fewInQueue } from "./Queue.tsx";
import { Station } from "./Station.tsx";
import css from "./StationScreen.module.css";
import type { StationView } from "./types.ts";

/** Shows the station of one test. */
export function StationScreen({ test }: { readonly test: TestCode }) {
  const { t } = useTranslation(["station", "common"]);
  const testWord = useTestWords();
  const trpc = useTRPC();
  const { lengths, setLengths } = useLengthUnit();
  const corrections = useCorrections(test);
  const heat = useHeatAtHand(test, lengths);
  const { mode, setMode } = useMode(test, heat.isPending ? undefined : (heat.data?.heat ?? null));
  const query = useQuery(trpc.station.view.queryOptions({ test, lengths, most: fewInQueue }));
  return (
    <Screen
      title={testWord(test, "name")}
      mark={<TestMark test={test} size="large" />}
      actions={
        query.data !== undefined && (
          <>
            <Counts counts={query.data.counts} />
            {query.data.open && mode !== null && <ModeChoice mode={mode} setMode={setMode} />}
          </>
        )
      }
      hints={
        mode !== "paper"
          ? []
          : [
              { keys: "Enter", does: t("keys.find") },
              { keys: "Esc", does: t("keys.leave") },
            ]
      }
      ready={!query.isPending && mode !== null}
    >
      <Answer query={query}>
        {(view) =>
          view.open ? (
            <>
              {mode === "live" && (
                <LiveStation
                  {...{ test, lengths }}
                  parameters={view.parameters}
                  recent={view.recent}
                  onCorrect={corrections.correct}
                  onPaper={() => setMode("paper")}
                />
              )}
              {mode === "paper" && (
                <>
                  <HeatBehind heat={heat.data?.heat ?? null} onShow={() => setMode("live")} />
                  <Station {...{ test, view, lengths, setLengths, corrections }} />
                </>
              )}
              <Correcting corrections={corrections} parameters={view.parameters} lengths={lengths} />
            </>
          ) : (
            <EmptyState
              title={t("closed.title")}
              action={<LinkButton to="/day">{t("closed.go")}</LinkButton>}
            >
              <p>{t("closed.step")}</p>
            </EmptyState>
          )
        }
      </Answer>
    </Screen>
  );
}

/** Counts the station's athletes: done, waiting, to come. */
function Counts({ counts }: { readonly counts: StationView["counts"] }) {
  const { t } = useTranslation("station");
  return (
    <Row as="ul" gap={2} wrap aria-label={t("counts.label")}>
      {(["waiting", "done", "later", "leftOut"] as const).map((name) =>
        name === "leftOut" && counts.leftOut === 0 ? null : (
          <li key={name}>
            <Tag tone={name === "waiting" && counts.waiting > 0 ? "go" : "quiet"}>
              {t(`counts.${name}`, { count: counts[name] })}
            </Tag>
          </li>
        ),
      )}
    </Row>
  );
}

interface HeatBehindProps {
  readonly heat: LiveHeat | null;
  readonly onShow: () => void;
}

/** Says over the entry from paper that a heat of this test has athletes in its lanes, with the way back to it. */
function HeatBehind({ heat, onShow }: HeatBehindProps) {
  const { t } = useTranslation("live");
  if (heat === null || heat.allDone || heat.lane.length === 0) return null;
  return (
    <div className={noticeCss.notice}>
      <Row gap={3} align="center" wrap between>
        <p role="status" className="strong">
          {t(`behind.${heat.state}`, { count: heat.lane.length })}
        </p>
        <Button hint="Alt+L" onPress={onShow}>
          {t("behind.show")}
        </Button>
      </Row>
    </div>
  );
}

interface ModeChoiceProps {
  readonly mode: Mode;
  readonly setMode: (mode: Mode) => void;
}

/** Chooses whether the test is run here, or keyed from paper. */
function ModeChoice({ mode, setMode }: ModeChoiceProps) {
  const { t } = useTranslation("live");
  useKeys({ "Alt+L": () => setMode(mode === "live" ? "paper" : "live") });
  const options = (["live", "paper"] as const).map((value) => ({ value, label: t(`mode.${value}`) }));
  return (
    <Row gap={2} align="center" className={css.mode}>
      <Choice label={t("mode.label")} hideLabel options={options} value={mode} onChange={setMode} />
      <KeyHint keys="Alt+L" />
    </Row>
  );
}

interface CorrectingProps {
  readonly corrections: Corrections;
  /** The frozen parameters of the day. */
  readonly parameters: unknown;
  readonly lengths: LengthUnit;
}

/** The correction that is open over a station, whichever of its views is under it. */
function Correcting({ corrections, ...rest }: CorrectingProps) {
  if (corrections.open === null) return null;
  const { attempt } = corrections.open;
  return <CorrectDialog key={attempt.attemptId} {...{ attempt, corrections, ...rest }} />;
}
