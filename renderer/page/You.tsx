import { useTranslation } from "react-i18next";
import { notTold } from "../../electron/domain/privacy/hierarchy.ts";
import { handInAgeBands, handInCategories } from "../../electron/domain/reference-table/hand-in-coding.ts";
import type { Looking } from "../../electron/domain/reference-table/look-up.ts";
import type { LengthUnit } from "../../electron/domain/tests/protocol.ts";
import { Choice } from "../parts/controls/Choice.tsx";
import { Select } from "../parts/controls/Select.tsx";
import { Row } from "../parts/flow/Stack.tsx";
import { Section } from "../parts/layout/Panel.tsx";

interface YouProps {
  readonly who: Looking;
  readonly setWho: (who: Looking) => void;
  readonly lengths: LengthUnit;
  readonly setLengths: (lengths: LengthUnit) => void;
}

const told = handInAgeBands.filter((band) => band !== notTold);

/** Whom somebody wants to be compared with: both may stay unsaid. */
export function You({ who, setWho, lengths, setLengths }: YouProps) {
  const { t } = useTranslation(["page", "common"]);
  const age = told.indexOf(who.ageBand ?? "");
  return (
    <Section title={t("you.title")}>
      <p>{t("you.why")}</p>
      <Choice
        label={t("you.category")}
        options={handInCategories.map((value) => ({ value, label: t(`you.categories.${value}`) }))}
        value={
          who.category === null ? notTold : (handInCategories.find((each) => each === who.category) ?? null)
        }
        onChange={(chosen) => setWho({ ...who, category: chosen === notTold ? null : chosen })}
      />
      <Row gap={6} lines={4} align="start" wrap>
        <Select
          label={t("you.age")}
          value={age}
          onChange={(index) => setWho({ ...who, ageBand: told[index] ?? null })}
        >
          <option value={-1}>{t("you.noAge")}</option>
          {told.map((band, index) => {
            const [from = "", to = ""] = band.split(" to ");
            return (
              <option key={band} value={index}>
                {t("you.ages", { from, to })}
              </option>
            );
          })}
        </Select>
        <Choice
          label={t("you.lengths")}
          options={(["cm", "in"] as const).map((unit) => ({ value: unit, label: t(`common:unit.${unit}`) }))}
          value={lengths}
          onChange={setLengths}
        />
      </Row>
      {/* The band of 15 to 19 has both. */}
      {(age === -1 || age <= told.indexOf("15 to 19")) && <p className="small">{t("you.minor")}</p>}
    </Section>
  );
}
