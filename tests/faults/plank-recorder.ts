/** What a page of a heat sounded and showed, in ms of its `performance.now()`. */
export interface Recorded {
  /** When the key that starts was pressed; null before. */
  startedAt: number | null;
  /** Each note that was given to the sound card. */
  readonly notes: {
    readonly wave: string;
    readonly hertz: number;
    readonly heardAt: number;
    takenBack: boolean;
  }[];
  /** Each change of the running clock and of the stage that is named. */
  readonly shown: { readonly what: "clock" | "stage"; readonly text: string; readonly at: number }[];
}

declare global {
  interface Window {
    recorded?: Recorded;
  }
}

/**
 * Records, from before the page's own scripts run, what it gives to the sound card and what it shows. The page runs the text
 * of this function: it sees nothing around it.
 */
export function recordHeat(): void {
  const recorded: Recorded = { startedAt: null, notes: [], shown: [] };
  window.recorded = recorded;
  const pitches = new WeakMap<AudioParam, number>();
  const sounding = new WeakMap<OscillatorNode, Recorded["notes"][number]>();
  const [setValue, start, stop] = [
    AudioParam.prototype.setValueAtTime,
    OscillatorNode.prototype.start,
    OscillatorNode.prototype.stop,
  ];
  AudioParam.prototype.setValueAtTime = function (value, at) {
    pitches.set(this, value);
    return setValue.call(this, value, at);
  };
  OscillatorNode.prototype.start = function (when = 0) {
    const { contextTime = 0, performanceTime = 0 } = (this.context as AudioContext).getOutputTimestamp();
    const heardAt = performanceTime + (when - contextTime) * 1_000;
    const note = { wave: this.type, hertz: pitches.get(this.frequency) ?? 0, heardAt, takenBack: false };
    recorded.notes.push(note);
    sounding.set(this, note);
    start.call(this, when);
  };
  OscillatorNode.prototype.stop = function (when) {
    // What is stopped at once before it began is never heard.
    const note = sounding.get(this);
    if (when === undefined && note !== undefined) note.takenBack = true;
    stop.call(this, when);
  };
  addEventListener(
    "keydown",
    ({ code, timeStamp }) => {
      if (code === "Space") recorded.startedAt ??= timeStamp;
    },
    true,
  );
  const last = { clock: "", stage: "" };
  new MutationObserver(() => {
    const at = performance.now();
    const now = {
      clock: document.querySelector('[role="timer"]')?.textContent ?? "",
      stage: document.querySelector('[data-kind="now"] strong')?.textContent ?? "",
    };
    for (const what of ["clock", "stage"] as const) {
      if (now[what] === last[what] || now[what] === "") continue;
      last[what] = now[what];
      recorded.shown.push({ what, text: now[what], at });
    }
  }).observe(document, { subtree: true, childList: true, characterData: true });
}
