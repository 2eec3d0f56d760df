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
import type { Admitted, Before } from "./people.ts";

interface DoneProps {
  readonly admitted: Admitted;
  readonly before: Before | null;
  /** Opens the athlete's sheet again after the check-in was undone. */
  readonly onUndone: (athleteId: number) => void;
}

/** Shows the bib to hand over, as large as possible; the search already waits for the next athlete. */
export function Done({ admitted, before, onUndone }: DoneProps) {
  const { t } = useTranslation("checkIn");
  const steps = useSteps();
  const { name, bib, state } = admitted;
  return (
    <Stack as="section" gap={4} top aria-live="polite">
      <h2 className={css.name}>{state === "testing" ? t("done.title", { name }) : name}</h2>
      {state === "testing" ? (
        <div className={css.bibToGive}>
          <BigNumber size="hero" label={t("done.giveBib")} number={bib} />
          <GoesTo athleteId={admitted.athleteId} />
        </div>
      ) : (
        <p>{t("done.notTesting", { name })}</p>
      )}
      <div>
        <Button
          busy={steps.busy}
          onPress={() => {
            void steps.takeBack(admitted, before).then(() => onUndone(admitted.athleteId));
          }}
        >
          {t("done.undo")}
        </Button>
      </div>
      <Cautions />
    </Stack>
  );
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
            <TestMark test={first} size="large" name="ability" />
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
