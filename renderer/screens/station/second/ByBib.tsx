import { useState } from "react";
import { useTranslation } from "react-i18next";
import type { Sentence } from "../../../../electron/domain/words.ts";
import { useTRPCClient } from "../../../app/client.tsx";
import { sentenceOf } from "../../../app/trouble.ts";
import { Button } from "../../../parts/controls/Button.tsx";
import { NumberField } from "../../../parts/controls/NumberField.tsx";
import { Row } from "../../../parts/flow/Stack.tsx";
import { useSay } from "../../../words/say.ts";
import type { StationPerson } from "../types.ts";

/** Finds whoever is watched by a typed bib. */
export function ByBib({ onFound }: { readonly onFound: (who: StationPerson) => void }) {
  const { t } = useTranslation("station");
  const say = useSay();
  const client = useTRPCClient();
  const [bib, setBib] = useState("");
  const [error, setError] = useState<Sentence | null>(null);
  function find(): void {
    if (bib.trim() === "") return;
    client.study.find.query({ bib }).then(onFound, (why: unknown) => setError(sentenceOf(why)));
  }
  return (
    <Row gap={4} align="end" wrap>
      <NumberField
        label={t("entry.bib")}
        value={bib}
        onChange={(typed) => {
          setBib(typed);
          setError(null);
        }}
        onEnter={find}
        error={error === null ? null : say(error)}
        maxLength={6}
        autoFocus
      />
      <Button size="large" hint="Enter" onPress={find}>
        {t("entry.find")}
      </Button>
    </Row>
  );
}
