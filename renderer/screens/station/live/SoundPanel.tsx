import { useTranslation } from "react-i18next";
import { Button } from "../../../parts/controls/Button.tsx";
import { useSound } from "../../../sound/useSound.ts";
import css from "./SoundPanel.module.css";

interface SoundPanelProps {
  /** The device at which the heat sounds that is looked at here; null: it sounds here. */
  readonly elsewhere: string | null;
}

/** Shows the sound of a live station: what sets it, or at which device the heat sounds instead. */
export function SoundPanel({ elsewhere }: SoundPanelProps) {
  const { t } = useTranslation("live");
  if (elsewhere === null) return <SoundHere />;
  return (
    <p className="small quiet" role="status">
      {t("sound.elsewhere", { who: elsewhere })}
    </p>
  );
}

/** Sets the volume, with tones to try it; says if the machine has no sound. */
function SoundHere() {
  const { t } = useTranslation("live");
  const { state, volume, setVolume, test } = useSound();
  if (state === "none") return <p className="small quiet">{t("sound.none")}</p>;
  return (
    <section className={css.sound} aria-label={t("sound.title")}>
      <label className={css.volume}>
        <span>{t("sound.volume")}</span>
        <input
          type="range"
          min="0"
          max="100"
          value={Math.round(volume * 100)}
          onChange={(event) => setVolume(Number(event.target.value) / 100)}
        />
      </label>
      <Button keepsFocus onPress={test}>
        {t("sound.test")}
      </Button>
      {state === "asleep" && <p className="small quiet">{t("sound.asleep")}</p>}
    </section>
  );
}
