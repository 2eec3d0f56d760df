import type { UseQueryResult } from "@tanstack/react-query";
import { type ReactNode, useEffect, useState } from "react";
import { useTranslation } from "react-i18next";
import { sentenceOf } from "../../app/trouble.ts";
import { useSay } from "../../words/say.ts";
import { Button } from "../controls/Button.tsx";
import { Stack } from "../flow/Stack.tsx";
import css from "./Answer.module.css";

interface AnswerProps<Data> {
  /** `useQuery(trpc.….queryOptions())` */
  readonly query: UseQueryResult<Data, unknown>;
  readonly children: (data: Data) => ReactNode;
}

/** Shows a query's answer. Until it comes, nothing for half a second, then a word; after a failure why, and a retry. */
export function Answer<Data>({ query, children }: AnswerProps<Data>) {
  const { t } = useTranslation("common");
  const say = useSay();
  if (query.data !== undefined) return children(query.data);
  if (query.isError) {
    return (
      <Stack gap={3} align="start" className={`measure ${css.failed}`} role="alert">
        <p>{say(sentenceOf(query.error))}</p>
        <Button onPress={() => void query.refetch()}>{t("answer.again")}</Button>
      </Stack>
    );
  }
  return <Waiting />;
}

/** Says that work goes on, once it takes over half a second. */
function Waiting() {
  const { t } = useTranslation("common");
  const [late, setLate] = useState(false);
  useEffect(() => {
    const timer = setTimeout(() => setLate(true), 500);
    return () => clearTimeout(timer);
  }, []);
  return <p className={`quiet ${css.waiting}`}>{late && t("answer.waiting")}</p>;
}
