import { useTranslation } from "react-i18next";
import { Button, LinkButton } from "../../parts/controls/Button.tsx";
import { Row, Stack } from "../../parts/flow/Stack.tsx";
import { BigNumber } from "../../parts/marks/BigNumber.tsx";
import { TestMark } from "../../parts/marks/TestMark.tsx";
import css from "./admit/PersonSheet.module.css";
import { useSteps } from "./admit/useSteps.ts";
import type { SheetPerson } from "./people.ts";

interface HereProps {
  readonly person: SheetPerson;
  readonly onAsk: () => void;
  /** Called when there is nothing more to do about them here. */
  readonly onLeft: () => void;
}

/** Shows an athlete who was admitted or is known not to come: their state, and what can be done about it. */
export function Here({ person, onAsk, onLeft }: HereProps) {
  const { t } = useTranslation("checkIn");
  return (
    <>
      {person.state === "testing" ? <Testing person={person} /> : <Elsewhere person={person} />}
      <Actions person={person} onAsk={onAsk} onLeft={onLeft} />
      <p>
        <LinkButton to={`/athletes/${person.athleteId}`}>{t("here.page")}</LinkButton>
      </p>
    </>
  );
}

/** What holds of somebody checked in: bib, tests, the big screen, sharing. */
export function Testing({ person }: { readonly person: SheetPerson }) {
  const { t } = useTranslation("checkIn");
  return (
    <div className={css.testing}>
      <BigNumber size="hero" label={t("here.bib")} number={person.bib} />
      <Stack as="ul" gap={1} className={css.holds}>
        <li>
          {person.leftOut.length === 0 ? t("here.takesAll") : `${t("done.leavesOut")} `}
          {person.leftOut.map((test) => (
            <TestMark key={test} test={test} size="small" name="ability" />
          ))}
        </li>
        <li>{t(`here.board.${person.board}`)}</li>
        <li>{t(`here.share.${person.share ? "yes" : "no"}`)}</li>
      </Stack>
    </div>
  );
}

function Elsewhere({ person: { state } }: { readonly person: SheetPerson }) {
  const { t } = useTranslation("checkIn");
  if (state === "no-show") return <p>{t("here.noShowSays")}</p>;
  return <p>{state === "withdrawn" ? t("here.withdrawnSays") : t("here.notTesting")}</p>;
}

function Actions({ person, onAsk, onLeft }: HereProps) {
  const { t } = useTranslation("checkIn");
  const steps = useSteps();
  const back = person.state === "withdrawn" && person.bib !== null;
  return (
    <Row gap={3} wrap data-start>
      {back ? (
        <Button kind="primary" busy={steps.busy} onPress={() => void steps.takeBack(person)} autoFocus>
          {t("here.backIn")}
        </Button>
      ) : (
        <Button kind={person.state === "testing" ? "quiet" : "primary"} onPress={onAsk} autoFocus>
          {person.state === "testing" ? t("here.change") : t("here.askAgain")}
        </Button>
      )}
      {person.state === "testing" && (
        <Button busy={steps.busy} onPress={() => void steps.withdraw(person).then(onLeft)}>
          {t("here.withdraw")}
        </Button>
      )}
      {person.state === "testing" && !person.measured && (
        <Button busy={steps.busy} onPress={() => void steps.takeBack(person)}>
          {t("here.undo")}
        </Button>
      )}
    </Row>
  );
}
