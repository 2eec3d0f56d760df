import { useMutation, useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import { mayBeUnder18 } from "../../../../electron/domain/people/age.ts";
import { fold } from "../../../../electron/domain/people/fold.ts";
import type { Known } from "../../../../electron/domain/people/questions.ts";
import { useTRPC } from "../../../app/client.tsx";
import { useInitials } from "../../../app/initials.tsx";
import { sentenceOf } from "../../../app/trouble.ts";
import { Button } from "../../../parts/controls/Button.tsx";
import { Row, Stack } from "../../../parts/flow/Stack.tsx";
import {
  emptyWalkUp,
  faultsOf,
  type TypedWalkUp,
  type WalkUpFault,
  WalkUpFields,
} from "../../../parts/people/WalkUpFields.tsx";
import { useSay } from "../../../words/say.ts";
import type { Admitted } from "../people.ts";
import { AdmissionForm } from "./AdmissionForm.tsx";
import css from "./PersonSheet.module.css";

interface WalkUpProps {
  /** The text of the search that found nobody. */
  readonly typed: string;
  /** The calendar day of the check-in, ISO 8601. */
  readonly date: string;
  readonly freeBib: number;
  readonly onDone: (admitted: Admitted) => void;
  readonly onCancel: () => void;
}

/** Admits somebody who is on no list: who they are, then the same questions as for everybody. */
export function WalkUp({ typed, date, freeBib, onDone, onCancel }: WalkUpProps) {
  const { t } = useTranslation("checkIn");
  const say = useSay();
  const trpc = useTRPC();
  const { ask } = useInitials();
  const [who, setWho] = useState<TypedWalkUp>(() => emptyWalkUp(typed));
  const [tried, setTried] = useState(false);
  const [askedOf, setAskedOf] = useState<string | null>(null);
  const leagues = useQuery(trpc.checkIn.leagues.queryOptions()).data ?? [];
  const walkUp = useMutation(
    trpc.checkIn.walkUp.mutationOptions({ meta: { shownByScreen: true }, onSuccess: onDone }),
  );
  const refusal = walkUp.isError ? sentenceOf(walkUp.error) : null;
  const isOfNumber = refusal?.key === "checkIn.numberTaken";
  const birthYear = /^\d{4}$/.test(who.birthYear) ? Number(who.birthYear) : null;

  return (
    <Stack gap={4} top className={css.person} data-walk-up>
      <Row as="header" gap={4} align="start" between>
        <h2 className={css.name}>{t("walkUpForm.title")}</h2>
        <Button onPress={onCancel}>{t("walkUpForm.cancel")}</Button>
      </Row>
      <AdmissionForm
        known={stranger(birthYear, date)}
        bib={freeBib}
        hasBib={false}
        busy={walkUp.isPending}
        refusal={isOfNumber ? null : refusal}
        alsoCheck={() => {
          setTried(true);
          // Asked once: whoever leaves it as it is means a league of that very name.
          const asks = askedOf !== who.league && isHalfOf(who.league, leagues);
          if (asks) setAskedOf(who.league);
          return faultsOf(who).size === 0 && !asks;
        }}
        onSend={async (outcome) => {
          const by = await ask();
          if (by === null) return;
          const { league, name, number, category } = who;
          const year = outcome.birthYear ?? birthYear;
          walkUp.mutate({ ...outcome, league, name, number, category, birthYear: year, by });
        }}
      >
        <WalkUpFields
          who={who}
          onChange={(next) => {
            setWho(next);
            walkUp.reset();
          }}
          faults={shownFaults()}
          numberRefusal={isOfNumber && refusal !== null ? say(refusal) : null}
        />
      </AdmissionForm>
    </Stack>
  );

  function shownFaults(): ReadonlySet<WalkUpFault> {
    if (!tried) return new Set();
    return new Set([...faultsOf(who), ...(askedOf === who.league ? (["halfLeague"] as const) : [])]);
  }
}

/** Tells whether a league's name as typed is none that is known, but a part of one. */
function isHalfOf(typed: string, leagues: readonly { readonly name: string }[]): boolean {
  const known = leagues.map(({ name }) => fold(name));
  const wanted = fold(typed);
  return wanted !== "" && !known.includes(wanted) && known.some((name) => name.includes(wanted));
}

/** Returns what is known about an athlete whom the store does not know. */
function stranger(birthYear: number | null, date: string): Known {
  return {
    birthYear,
    mayBeUnder18: mayBeUnder18(birthYear, date),
    guardianConsent: false,
    board: "bib",
    share: false,
    asked: false,
    leftOut: [],
  };
}
