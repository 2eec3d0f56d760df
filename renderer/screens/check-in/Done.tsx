import { useQuery } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { nextTest } from "../../../electron/domain/queue/order.ts";
import { useTRPC } from "../../app/client.tsx";
import { Button } from "../../parts/controls/Button.tsx";
import { Stack } from "../../parts/flow/Stack.tsx";
import { Cautions } from "../../parts/layout/Cautions.tsx";
import { BigNumber } from "../../parts/marks/BigNumber.tsx";
import { TestMark } from "../../parts/marks/TestMark.tsx";
import css from "./admit/PersonSheet.module.css";
import { useSteps } from "./admit/useSteps.ts";
import { Testing } from "./Here.tsx";
import type { Admitted, Before } from "./people.ts";

interface DoneProps {
  readonly admitted: Admitted;
  readonly before: Before | null;
  /** True if they were checked in before: they keep their bib, and only answers were changed. */
  readonly changed: boolean;
  /** Opens the athlete's sheet again: the check-in was undone, or its answers are looked at once more. */
  readonly onOpen: (athleteId: number) => void;
}

/** Shows the bib to hand over, as large as possible; the search already waits for the next athlete. */
export function Done({ admitted, before, changed, onOpen }: DoneProps) {
  const { t } = useTranslation("checkIn");
  const steps = useSteps();
  const { name, bib, state } = admitted;
  return (
    <Stack as="section" gap={4} top aria-live="polite">
      <h2 className={css.name}>
        {state === "testing" ? t(changed ? "done.changed" : "done.title", { name }) : name}
      </h2>
      {state === "testing" && changed ? (
        <Changed athleteId={admitted.athleteId} />
      ) : state === "testing" ? (
        <div className={css.bibToGive}>
          <BigNumber size="hero" label={t("done.giveBib")} number={bib} />
          <GoesTo athleteId={admitted.athleteId} />
        </div>
      ) : (
        <p>{t("done.notTesting", { name })}</p>
      )}
      <div>
        {/* A change is undone by another one: the other undo would take the whole check-in away. */}
        {changed ? (
          <Button onPress={() => onOpen(admitted.athleteId)}>{t("done.again")}</Button>
        ) : (
          <Button
            busy={steps.busy}
            onPress={() => {
              void steps.takeBack(admitted, before).then(() => onOpen(admitted.athleteId));
            }}
          >
            {t("done.undo")}
          </Button>
        )}
      </div>
      <Cautions />
    </Stack>
  );
}

/** What holds now, as their sheet says it. */
function Changed({ athleteId }: { readonly athleteId: number }) {
  const trpc = useTRPC();
  const person = useQuery(trpc.checkIn.person.queryOptions({ athleteId })).data;
  return person === undefined ? null : <Testing person={person} />;
}

function GoesTo({ athleteId }: { readonly athleteId: number }) {
  const { t } = useTranslation("checkIn");
  const trpc = useTRPC();
  const person = useQuery(trpc.checkIn.person.queryOptions({ athleteId }));
  const leftOut = person.data?.leftOut ?? [];
  const first = nextTest(new Set(), new Set(leftOut));
  if (person.data === undefined || person.data.measured) return null;
  return (
    <Stack as="dl" gap={3} className={css.goesTo}>
      {first !== null && (
        <div>
          <dt>{t("done.first")}</dt>
          <dd>
            <TestMark test={first} size="large" name="station" />
          </dd>
        </div>
      )}
      {leftOut.length > 0 && (
        <div>
          <dt>{t("done.leavesOut")}</dt>
          <dd>
            {leftOut.map((test) => (
              <TestMark key={test} test={test} size="small" name="ability" />
            ))}
          </dd>
        </div>
      )}
    </Stack>
  );
}
