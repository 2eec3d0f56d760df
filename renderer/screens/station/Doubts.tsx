import { useMutation } from "@tanstack/react-query";
import { type ReactNode, useState } from "react";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../app/client.tsx";
import { useInitials } from "../../app/initials.tsx";
import { Button } from "../../parts/controls/Button.tsx";
import { useFocusStays } from "../../parts/controls/useFocusStays.ts";
import { Row, Stack } from "../../parts/flow/Stack.tsx";
import { asSentence } from "../../parts/sheets/sheet.ts";
import { useSay } from "../../words/say.ts";
import css from "./Doubts.module.css";

interface DoubtsProps {
  /** What is asked about the attempt and those before it; none: nothing is shown. */
  readonly doubts: readonly Parameters<typeof asSentence>[0][];
  /** The attempt in doubt. */
  readonly attemptId: string;
  readonly bib: number | null;
  readonly onCorrect: () => void;
}

/** Asks what is doubtful about a live result, with both answers. Until one is given the big screen waits with the result. */
export function Doubts({ doubts, ...answers }: DoubtsProps) {
  const { t } = useTranslation("station");
  if (doubts.length === 0) return null;
  return (
    <AskedOf doubts={doubts}>
      <p>{t("doubt.waits")}</p>
      <Row gap={2} wrap>
        <BothAnswers {...answers} />
      </Row>
    </AskedOf>
  );
}

interface AskedOfProps {
  readonly doubts: DoubtsProps["doubts"];
  readonly children?: ReactNode;
}

/** The questions alone, where the answers stand elsewhere. */
export function AskedOf({ doubts, children }: AskedOfProps) {
  const say = useSay();
  return (
    <Stack gap={1} align="start" className={`small ${css.doubts}`}>
      {doubts.map((doubt) => (
        <p key={doubt.key}>{say(asSentence(doubt))}</p>
      ))}
      {children}
    </Stack>
  );
}

/** Shows both answers to a doubt in the words of every question here: that it is to be changed, and that it is right. */
export function BothAnswers({ onCorrect, ...answer }: Omit<DoubtsProps, "doubts">) {
  const { t } = useTranslation("station");
  return (
    <>
      <Button label={t("doubt.changeWho", { bib: answer.bib })} onPress={onCorrect}>
        {t("doubt.change")}
      </Button>
      <ItIsRight {...answer} />
    </>
  );
}

/** The answer that a result in doubt is right. */
function ItIsRight({ attemptId, bib }: { readonly attemptId: string; readonly bib: number | null }) {
  const { t } = useTranslation("station");
  const { ask } = useInitials();
  const trpc = useTRPC();
  const confirm = useMutation(trpc.heat.confirm.mutationOptions());
  // Kept through every try: the same answer is noted once.
  const [id] = useState(() => crypto.randomUUID());
  const button = useFocusStays();

  async function isRight(): Promise<void> {
    const by = await ask();
    if (by !== null) confirm.mutate({ attemptId, id, by });
  }
  return (
    <Button
      label={t("doubt.rightWho", { bib })}
      busy={confirm.isPending}
      onPress={() => void isRight()}
      buttonRef={button}
    >
      {t("doubt.right")}
    </Button>
  );
}
