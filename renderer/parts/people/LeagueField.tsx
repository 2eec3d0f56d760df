import { useQuery } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { fold } from "../../../electron/domain/people/fold.ts";
import { useTRPC } from "../../app/client.tsx";
import { Button } from "../controls/Button.tsx";
import { TextField } from "../controls/TextField.tsx";
import { Row, Stack } from "../flow/Stack.tsx";

interface LeagueFieldProps {
  readonly value: string;
  readonly onChange: (league: string) => void;
  readonly error: string | null;
  /** True where nothing else is asked. */
  readonly autoFocus?: boolean;
}

const most = 6;

/** Enters a league: a known one by a press, or a new one by typing. */
export function LeagueField({ value, onChange, error, autoFocus = false }: LeagueFieldProps) {
  const { t } = useTranslation("checkIn");
  const trpc = useTRPC();
  const known = useQuery(trpc.checkIn.leagues.queryOptions()).data ?? [];
  const like = known.filter(({ name }) => fold(name).includes(fold(value)) && fold(name) !== fold(value));
  return (
    <Stack gap={2}>
      <TextField
        label={t("walkUpForm.league")}
        help={t("walkUpForm.leagueHelp")}
        value={value}
        onChange={onChange}
        error={error}
        maxLength={200}
        autoFocus={autoFocus}
      />
      {like.length > 0 && (
        <Row gap={2} wrap>
          {like.slice(0, most).map(({ id, name }) => (
            <Button key={id} onPress={() => onChange(name)}>
              {name}
            </Button>
          ))}
        </Row>
      )}
    </Stack>
  );
}
