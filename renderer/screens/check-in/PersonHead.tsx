import { useTranslation } from "react-i18next";
import { Button } from "../../parts/Button.tsx";
import { Tag } from "../../parts/Tag.tsx";
import css from "./PersonSheet.module.css";
import type { SheetPerson } from "./people.ts";
import { useSteps } from "./useSteps.ts";

/** Who it is, large enough to read out; for somebody expected also the way to say that they did not come. */
export function PersonHead({ person }: { readonly person: SheetPerson }) {
  const { t } = useTranslation("checkIn");
  const steps = useSteps();
  const { name, number, league, state } = person;
  return (
    <header className={css.head}>
      <div>
        <h2 className={css.name}>{name}</h2>
        <p className={css.facts}>
          <span>{number === "" ? t("noNumber") : t("number", { number })}</span>
          <span>{league}</span>
          <Tag tone={state === "testing" ? "go" : "quiet"}>{t(`state.${state ?? "unlisted"}`)}</Tag>
        </p>
      </div>
      {state === "expected" && (
        <Button busy={steps.busy} onPress={() => void steps.noShow(person)}>
          {t("here.noShow")}
        </Button>
      )}
    </header>
  );
}
