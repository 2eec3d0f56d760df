import { useEffect, useState } from "react";
import { useTranslation } from "react-i18next";
import type { TestCode } from "../../../../electron/domain/tests/registry.ts";
import { useInitials } from "../../../app/initials.tsx";
import { useKeys } from "../../../app/keys.ts";
import { isDevice } from "../../../app/table.ts";
import { useTestWords } from "../../../app/testWords.ts";
import { Button, LinkButton } from "../../../parts/controls/Button.tsx";
import { Dialog } from "../../../parts/controls/Dialog.tsx";
import { TestMark } from "../../../parts/marks/TestMark.tsx";
import { useSound } from "../../../sound/useSound.ts";
import type { LiveHeat } from "../../../tests/live/types.ts";
import { toolOf } from "../../../tests/tools.ts";
import { RulesInFull } from "../Rules.tsx";
import css from "./LiveHead.module.css";
import { soundsAt } from "./soundsAt.ts";

interface RulesButtonProps {
  readonly test: TestCode;
  /** The frozen parameters of the day. */
  readonly parameters: unknown;
}

type OtherHeat = Pick<LiveHeat, "device" | "deviceIsThere">;

interface LiveHeadProps extends RulesButtonProps {
  /** Another's heat that is looked at here; null: the own. */
  readonly otherHeat: OtherHeat | null;
  readonly onPaper: () => void;
}

/** Shows one line over a live station, which fills the window: the test, the sound, the initials, and the exits. */
export function LiveHead({ test, parameters, otherHeat, onPaper }: LiveHeadProps) {
  const { t } = useTranslation(["live", "common"]);
  const testWord = useTestWords();
  const { initials, change } = useInitials();
  return (
    <header className={css.head}>
      <h1 className={css.title}>
        <TestMark test={test} />
        <span className={css.name}>{testWord(test, "name")}</span>
        {otherHeat !== null && <Whose heat={otherHeat} />}
      </h1>
      {toolOf(test).silent !== true && <SoundPanel elsewhere={soundsAt(otherHeat)} />}
      <div className={css.ways}>
        {initials !== null && (
          <Button onPress={() => void change()}>{t("common:initials.some", { initials })}</Button>
        )}
        <RulesButton test={test} parameters={parameters} />
        <Button hint="Alt+L" onPress={onPaper}>
          {t("mode.paper")}
        </Button>
        {!isDevice && <LinkButton to="/day">{t("head.day")}</LinkButton>}
      </div>
    </header>
  );
}

/** Says at which device the heat is tapped that is looked at here. */
function Whose({ heat: { device } }: { readonly heat: OtherHeat }) {
  const { t } = useTranslation("live");
  return (
    <span className={`quiet ${css.whose}`}>
      {device === null ? t("head.ofNobody") : t("head.of", { who: device })}
    </span>
  );
}

/** Opens the rules and cautions with one key, also while a heat runs. */
function RulesButton({ test, parameters }: RulesButtonProps) {
  const { t } = useTranslation(["station", "common"]);
  const testWord = useTestWords();
  const [open, setOpen] = useState(false);
  // The key that opens them closes them again.
  useKeys({ "Alt+R": () => setOpen(!open) }, { always: open });
  return (
    <>
      <Button hint="Alt+R" onPress={() => setOpen(true)}>
        {t("rules.title")}
      </Button>
      <Dialog
        open={open}
        onClose={() => setOpen(false)}
        title={testWord(test, "name")}
        actions={
          <Button hint="Esc" onPress={() => setOpen(false)} autoFocus>
            {t("station:history.close")}
          </Button>
        }
      >
        <RulesInFull test={test} parameters={parameters} />
      </Dialog>
    </>
  );
}

interface SoundPanelProps {
  /** The device at which the heat sounds that is looked at here; null: it sounds here. */
  readonly elsewhere: string | null;
}

/** Shows the sound of a live station: what sets it, or at which device the heat sounds instead. */
function SoundPanel({ elsewhere }: SoundPanelProps) {
  const { t } = useTranslation("live");
  if (elsewhere === null) return <SoundHere />;
  return (
    <p className="small quiet" role="status">
      {t("sound.elsewhere", { who: elsewhere })}
    </p>
  );
}

/** Sets the volume, with tones to try it; says if the machine has no sound, and puts it on where it needs a press. */
function SoundHere() {
  const { t } = useTranslation("live");
  const { state, volume, setVolume, test, wake } = useSound();
  const needsPress = useLagging(state === "asleep");
  if (needsPress)
    return (
      <div className={css.sound}>
        {/* The tones say that it is on. */}
        <Button kind="primary" keepsFocus onPress={() => void wake().then(test)}>
          {t("sound.wake")}
        </Button>
      </div>
    );
  if (state === "none") return <p className="small quiet">{t("sound.none")}</p>;
  return (
    <section className={css.sound} aria-label={t("sound.title")}>
      <label className={`strong ${css.volume}`}>
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
    </section>
  );
}

/** Ms until a change is shown: a sound that wakes by itself asks for nothing, and no key goes from under its own press. */
const lagMs = 800;

/** Returns the value as it was a moment ago. */
function useLagging(value: boolean): boolean {
  const [shown, setShown] = useState(false);
  useEffect(() => {
    const timer = setTimeout(() => setShown(value), lagMs);
    return () => clearTimeout(timer);
  }, [value]);
  return shown;
}
