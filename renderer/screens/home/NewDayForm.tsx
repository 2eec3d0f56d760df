import { useMutation } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import { useLocation } from "wouter";
import { queryClient, useTRPC } from "../../app/client.tsx";
import { Button } from "../../parts/controls/Button.tsx";
import { TextField } from "../../parts/controls/TextField.tsx";
import { Stack } from "../../parts/flow/Stack.tsx";
import { Panel } from "../../parts/layout/Panel.tsx";
import { writeDate } from "../../words/dates.ts";
import css from "./HomeScreen.module.css";

/** The place to begin a day. */
export function NewDayPanel({ today }: { readonly today: string }) {
  const { t } = useTranslation("home");
  return (
    <Panel paper title={t("own.title")}>
      <NewDayForm today={today} />
    </Panel>
  );
}

/** A day needs no more than a name and a date to begin with; `today` is the desk's own date. */
function NewDayForm({ today }: { readonly today: string }) {
  const { t, i18n } = useTranslation("home");
  const [, go] = useLocation();
  const trpc = useTRPC();
  const [title, setTitle] = useState("");
  const [date, setDate] = useState(today);
  const [tried, setTried] = useState(false);
  const create = useMutation(
    trpc.day.create.mutationOptions({
      async onSuccess() {
        await queryClient.invalidateQueries(trpc.day.current.queryFilter());
        go("/day");
      },
    }),
  );
  const empty = title.trim() === "";

  function submit(): void {
    setTried(true);
    if (!empty && date !== "") create.mutate({ title: title.trim(), date });
  }
  return (
    <Stack
      as="form"
      gap={4}
      align="start"
      onSubmit={(event) => {
        event.preventDefault();
        submit();
      }}
    >
      <div className={css.fields}>
        <TextField
          label={t("own.name")}
          help={t("own.nameHelp")}
          value={title}
          onChange={setTitle}
          error={tried && empty ? t("own.nameEmpty") : null}
          maxLength={80}
        />
        <TextField
          label={t("own.date")}
          type="date"
          value={date}
          onChange={setDate}
          help={writeDate(date, i18n.language)}
          error={tried && date === "" ? t("own.dateEmpty") : null}
        />
      </div>
      <Button kind="primary" size="large" type="submit" busy={create.isPending}>
        {t("own.start")}
      </Button>
    </Stack>
  );
}
