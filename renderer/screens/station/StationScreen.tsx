import { useQuery } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import { useTRPC } from "../../app/client.tsx";
import { useTestWords } from "../../app/testWords.ts";
import { LinkButton } from "../../parts/controls/Button.tsx";
import { Row } from "../../parts/flow/Stack.tsx";
import { Answer } from "../../parts/layout/Answer.tsx";
import { EmptyState } from "../../parts/layout/EmptyState.tsx";
import { Screen } from "../../parts/layout/Screen.tsx";
import { Tag } from "../../parts/marks/Tag.tsx";
import { TestMark } from "../../parts/marks/TestMark.tsx";
import { useLengthUnit } from "../../words/lengths.ts";
import { Correcting } from "./Correcting.tsx";
import { useCorrections } from "./drafts.ts";
import { HeatBehind } from "./live/HeatBehind.tsx";
import { LiveStation } from "./live/LiveStation.tsx";
import { ModeChoice } from "./live/ModeChoice.tsx";
import { useMode } from "./live/mode.ts";
import { useHeatAtHand } from "./live/sync/useHeatView.ts";
import { Station } from "./Station.tsx";
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
  const query = useQuery(trpc.station.view.queryOptions({ test, lengths }));
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
