import { useQuery } from "@tanstack/react-query";
import { useRef } from "react";
import { ComboBox } from "react-aria-components/ComboBox";
import { FieldError } from "react-aria-components/FieldError";
import { Input } from "react-aria-components/Input";
import { Label } from "react-aria-components/Label";
import { ListBox, ListBoxItem } from "react-aria-components/ListBox";
import { Popover } from "react-aria-components/Popover";
import { Text } from "react-aria-components/Text";
import { useTranslation } from "react-i18next";
import { fold } from "../../../electron/domain/people/fold.ts";
import { useTRPC } from "../../app/client.tsx";
import field from "../controls/Field.module.css";
import css from "./LeagueField.module.css";

interface LeagueFieldProps {
  readonly value: string;
  readonly onChange: (league: string) => void;
  readonly error: string | null;
  /** True where nothing else is asked. */
  readonly autoFocus?: boolean;
}

/** Enters a league: a known one from the list under the field, by arrows or a press, or a new one by typing. */
export function LeagueField({ value, onChange, error, autoFocus = false }: LeagueFieldProps) {
  const { t } = useTranslation("checkIn");
  const trpc = useTRPC();
  const known = useQuery(trpc.checkIn.leagues.queryOptions()).data ?? [];
  const like = known.filter(({ name }) => fold(name).includes(fold(value)) && fold(name) !== fold(value));
  const box = useRef<HTMLDivElement>(null);
  const input = useRef<HTMLInputElement>(null);

  function choose(name: string): void {
    onChange(name);
    requestAnimationFrame(() => leave(input.current));
  }
  return (
    <ComboBox
      ref={box}
      className={field.field ?? ""}
      // What was typed counts as it is: the list only offers.
      allowsCustomValue
      items={like}
      inputValue={value}
      onInputChange={onChange}
      selectedKey={null}
      onSelectionChange={(key) => {
        const chosen = known.find(({ id }) => id === key);
        if (chosen !== undefined) choose(chosen.name);
      }}
      menuTrigger="focus"
      validationBehavior="aria"
      isInvalid={error !== null}
      autoFocus={autoFocus}
    >
      <Label className="strong">{t("walkUpForm.league")}</Label>
      <Text slot="description" className="small quiet measure">
        {t("walkUpForm.leagueHelp")}
      </Text>
      <span className={field.box}>
        <Input
          ref={input}
          className={field.input ?? ""}
          autoComplete="off"
          spellCheck="false"
          maxLength={200}
        />
      </span>
      <FieldError className={`alert ${field.error}`}>{error}</FieldError>
      {/* Under the sentence about an error, which speaks of it. */}
      <Popover triggerRef={box} placement="bottom start" className={css.list ?? ""}>
        <ListBox<(typeof like)[number]>>
          {({ id, name }) => (
            <ListBoxItem id={id} textValue={name} className={css.league ?? ""}>
              {name}
            </ListBoxItem>
          )}
        </ListBox>
      </Popover>
    </ComboBox>
  );
}

/** Moves the focus from a field that is done to the next one of its form; a key that moved it already is enough. */
function leave(input: HTMLInputElement | null): void {
  if (input === null || document.activeElement !== input) return;
  const all = [...(input.closest("form, [role=alertdialog]")?.querySelectorAll("input") ?? [])];
  all[all.indexOf(input) + 1]?.focus();
}
