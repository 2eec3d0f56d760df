import { useMutation, useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../../app/client.tsx";
import { useInitials } from "../../../app/initials.tsx";
import { sentenceOf } from "../../../app/trouble.ts";
import { Button } from "../../../parts/controls/Button.tsx";
import { Row, Stack } from "../../../parts/flow/Stack.tsx";
import { Answer } from "../../../parts/layout/Answer.tsx";
import { Tag } from "../../../parts/marks/Tag.tsx";
import { Here } from "../Here.tsx";
import { type Admitted, type Before, beforeOf, type SheetPerson } from "../people.ts";
import { AdmissionForm } from "./AdmissionForm.tsx";
import css from "./PersonSheet.module.css";
import { useSteps } from "./useSteps.ts";

interface PersonSheetProps {
  readonly athleteId: number;
  /** `changed`: they were checked in before, and keep their bib. */
  readonly onDone: (admitted: Admitted, before: Before, changed: boolean) => void;
  /** Leaves the questions, answered or not. */
  readonly onCancel: () => void;
  /** Called when there is nothing more to do about somebody who was checked in. */
  readonly onLeft: () => void;
}

/** Shows one athlete: who they are, then the questions, or the decision once they are admitted. */
export function PersonSheet({ athleteId, ...does }: PersonSheetProps) {
  const trpc = useTRPC();
  const person = useQuery(trpc.checkIn.person.queryOptions({ athleteId }));
  return <Answer query={person}>{(known) => <Sheet person={known} {...does} />}</Answer>;
}

interface SheetProps extends Pick<PersonSheetProps, "onDone" | "onCancel" | "onLeft"> {
  readonly person: SheetPerson;
}

function Sheet({ person, onDone, onCancel, onLeft }: SheetProps) {
  const { state } = person;
  const [again, setAgain] = useState(false);
  const asking = again || state === "expected" || state === null;
  return (
    <Stack gap={4} top className={css.person}>
      <PersonHead person={person} onCancel={asking ? onCancel : null} />
      {asking ? (
        <Asking person={person} onDone={onDone} />
      ) : (
        <Here person={person} onAsk={() => setAgain(true)} onLeft={onLeft} />
      )}
    </Stack>
  );
}

function Asking({ person, onDone }: Pick<SheetProps, "person" | "onDone">) {
  const trpc = useTRPC();
  const { ask } = useInitials();
  const [before] = useState(() => beforeOf(person));
  const [was] = useState({ isSettled: person.state === "testing", bib: person.bib });
  const admit = useMutation(
    trpc.checkIn.admit.mutationOptions({
      meta: { shownByScreen: true },
      onSuccess: (admitted) => onDone(admitted, before, was.isSettled && admitted.bib === was.bib),
    }),
  );
  return (
    <AdmissionForm
      known={person}
      bib={person.bib ?? person.freeBib}
      hasBib={person.bib !== null}
      isSettled={was.isSettled}
      busy={admit.isPending}
      refusal={admit.isError ? sentenceOf(admit.error) : null}
      onSend={async (outcome) => {
        const by = await ask();
        if (by !== null) admit.mutate({ athleteId: person.athleteId, by, ...outcome });
      }}
    />
  );
}

interface PersonHeadProps {
  readonly person: SheetPerson;
  /** null: nothing is asked that could be left. */
  readonly onCancel: SheetProps["onCancel"] | null;
}

/** Shows the athlete's name large enough to read out, and for an expected one the button for a no-show. */
function PersonHead({ person, onCancel }: PersonHeadProps) {
  const { t } = useTranslation("checkIn");
  const steps = useSteps();
  const { name, number, league, state } = person;
  return (
    <Row as="header" gap={3} align="start" between>
      <div className={css.who}>
        <h2 className={css.name}>{name}</h2>
        <Row as="p" gap={4} lines={1} align="center" wrap className="lead">
          <span>{number === "" ? t("noNumber") : t("number", { number })}</span>
          <span>{league}</span>
          <Tag tone={state === "testing" ? "go" : "quiet"}>{t(`state.${state ?? "unlisted"}`)}</Tag>
        </Row>
      </div>
      <Row gap={2}>
        {state === "expected" && (
          <Button busy={steps.busy} onPress={() => void steps.noShow(person)}>
            {t("here.noShow")}
          </Button>
        )}
        {onCancel !== null && <Button onPress={onCancel}>{t("walkUpForm.cancel")}</Button>}
      </Row>
    </Row>
  );
}
