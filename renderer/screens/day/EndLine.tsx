import { useTranslation } from "react-i18next";
import { useTestWords } from "../../app/testWords.ts";
import { Row } from "../../parts/flow/Stack.tsx";
import { roundSpan } from "../../parts/plan/round-span.ts";
import { useWriteTime } from "../../words/dates.ts";
import type { DayForecast } from "./overview.ts";

type Told = NonNullable<DayForecast>;

/** Minutes by which the day must end earlier or later than planned for that to be said. */
const worthSaying = 5;

/** Says below the numbers what would end the day earlier, and how its end stands to what was planned. */
export function EndLine({ forecast }: { readonly forecast: DayForecast | undefined }) {
  if (forecast?.end == null) return null;
  const { suggestion, planned, end } = forecast;
  if (suggestion === null && planned === null) return null;
  return (
    <Row as="p" gap={5} lines={2} wrap>
      {suggestion !== null && <Suggested suggestion={suggestion} />}
      {planned !== null && <Planned planned={planned} end={end} />}
    </Row>
  );
}

function Suggested({
  suggestion: { change, minutes },
}: {
  readonly suggestion: NonNullable<Told["suggestion"]>;
}) {
  const { t } = useTranslation("day");
  const testWord = useTestWords();
  const test = "test" in change ? testWord(change.test, "name") : "";
  return <strong>{t(`ends.change.${change.kind}`, { test, count: minutes })}</strong>;
}

interface PlannedProps {
  readonly planned: NonNullable<Told["planned"]>;
  readonly end: NonNullable<Told["end"]>;
}

function Planned({ planned, end }: PlannedProps) {
  const { t } = useTranslation("day");
  const writeTime = useWriteTime();
  const { from, until } = roundSpan(planned, new Date(0));
  const minutes = Math.round((Date.parse(end.middle) - Date.parse(planned.middle)) / 60_000);
  const kind = Math.abs(minutes) < worthSaying ? "same" : minutes > 0 ? "later" : "earlier";
  return (
    <span>
      {t(`ends.planned.${kind}`, {
        from: writeTime(from),
        until: writeTime(until),
        count: Math.abs(minutes),
      })}
    </span>
  );
}
