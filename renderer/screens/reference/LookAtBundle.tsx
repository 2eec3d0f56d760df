import { useMutation } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import { bundleLimits } from "../../../electron/domain/reference/limits.ts";
import { leastToCompare } from "../../../electron/domain/statistics/place.ts";
import { useTRPC } from "../../app/client.tsx";
import { tell } from "../../app/messages.ts";
import { useTestWords } from "../../app/testWords.ts";
import { sentenceOf } from "../../app/trouble.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { TextField } from "../../parts/controls/TextField.tsx";
import { Form } from "../../parts/flow/Form.tsx";
import { Row } from "../../parts/flow/Stack.tsx";
import { Panel } from "../../parts/layout/Panel.tsx";
import { writeNumber } from "../../words/numbers.ts";
import { useSay } from "../../words/say.ts";
import css from "./Reference.module.css";
import { Tests } from "./Tests.tsx";
import type { BroughtBundle } from "./types.ts";
import { useWriteQuarters } from "./words.ts";

interface LookProps {
  readonly name: string;
  readonly bundle: BroughtBundle;
  readonly onDone: () => void;
}

/** Shows the content of an uploaded bundle, asks for its origin, and adds it. */
export function LookAtBundle({ name, bundle, onDone }: LookProps) {
  const { t, i18n } = useTranslation("reference");
  const writeQuarters = useWriteQuarters();
  const { marks, quarters, tests, known } = bundle;
  return (
    <Panel title={name}>
      <p>
        {t("look.holds", {
          count: marks,
          shown: writeNumber(marks, i18n.language),
          when: writeQuarters(quarters),
        })}
      </p>
      <Tests tests={tests} />
      {tests.every(({ sameRules }) => !sameRules) && <p>{t("look.nothingCompares")}</p>}
      <TooFew tests={tests} />
      {known === null ? (
        <AddForm bundle={bundle} onDone={onDone} />
      ) : (
        <Row gap={3} align="center" wrap role="status">
          <p>{t("look.known", { origin: known })}</p>
          <Button autoFocus onPress={onDone}>
            {t("look.putAway")}
          </Button>
        </Row>
      )}
    </Panel>
  );
}

/** Names the tests with too few marks for pages and cards to compare with. */
function TooFew({ tests }: Pick<BroughtBundle, "tests">) {
  const { t } = useTranslation("planning");
  const testWord = useTestWords();
  const few = tests.filter(({ sameRules, marks }) => sameRules && marks < leastToCompare);
  const names = [...new Set(few.map(({ test }) => testWord(test, "name")))];
  if (names.length === 0) return null;
  return <p>{t("reference.tooFew", { count: leastToCompare, tests: names.join(", ") })}</p>;
}

function AddForm({ bundle: { bundleId }, onDone }: Omit<LookProps, "name">) {
  const { t } = useTranslation("reference");
  const say = useSay();
  const trpc = useTRPC();
  const [origin, setOrigin] = useState("");
  const add = useMutation(
    trpc.reference.add.mutationOptions({
      meta: { shownByScreen: true },
      onSuccess({ added, origin: under }) {
        const key = added ? "reference:add.done" : "reference:look.known";
        tell({ tone: added ? "done" : "note", sentence: { key, values: { origin: under } } });
        onDone();
      },
    }),
  );

  function submit(): void {
    if (!add.isPending) add.mutate({ bundleId, origin });
  }
  return (
    <Form gap={4} className={css.form} onSubmit={submit}>
      <TextField
        label={t("add.origin")}
        help={t("add.help")}
        value={origin}
        onChange={(typed) => {
          setOrigin(typed);
          add.reset();
        }}
        error={add.isError ? say(sentenceOf(add.error)) : null}
        maxLength={bundleLimits.originLength}
        autoFocus
      />
      <Row gap={3} align="center" wrap>
        <Button kind="primary" type="submit" busy={add.isPending}>
          {t("add.button")}
        </Button>
        <Button onPress={onDone}>{t("add.leave")}</Button>
      </Row>
    </Form>
  );
}
