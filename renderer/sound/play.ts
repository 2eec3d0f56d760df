import { type Note, type SoundName, voices } from "./voices.ts";

/** A scheduled sound. */
export interface Playing {
  /** Its start, in seconds of the audio clock. */
  readonly when: number;
  /** Cancels it unheard and returns true; one that has begun plays to its end, and this returns false. */
  cancel(): boolean;
}

/** Attack in seconds: too quick to soften a beat, slow enough not to click. */
const rise = 0.0015;
/** Release of a held note, in seconds. */
const fall = 0.008;
/** Level at which a decaying note is cut, as a share of its peak: 66 dB down. */
const silence = 0.0005;
/** Seconds before its start in which a sound may already be in the card's buffer. */
const onItsWay = 0.02;

/**
 * Schedules a sound in `context` to begin exactly at `when`, in seconds of its clock; a past time means at once.
 * Nothing moves it afterwards.
 */
export function playSound(context: BaseAudioContext, out: AudioNode, name: SoundName, when: number): Playing {
  const begin = Math.max(when, context.currentTime);
  const sources = voices[name].map((note) => playNote(context, out, note, begin + note.at / 1000));
  return {
    when: begin,
    cancel() {
      if (begin <= context.currentTime + onItsWay) return false;
      for (const source of sources) {
        source.stop();
        source.disconnect();
      }
      return true;
    },
  };
}

function playNote(
  context: BaseAudioContext,
  out: AudioNode,
  note: Note,
  begin: number,
): AudioScheduledSourceNode {
  const end = begin + note.ms / 1000;
  const envelope = context.createGain();
  shape(envelope.gain, note, begin, end);
  envelope.connect(out);
  const source = note.wave === "noise" ? noise(context, note, envelope) : tone(context, note, begin, end);
  if (note.wave !== "noise") source.connect(envelope);
  source.addEventListener("ended", () => envelope.disconnect());
  source.start(begin);
  source.stop(end);
  return source;
}

function shape(gain: AudioParam, note: Note, begin: number, end: number): void {
  gain.setValueAtTime(0, begin);
  gain.linearRampToValueAtTime(note.peak, begin + rise);
  if (note.shape === "struck") {
    gain.exponentialRampToValueAtTime(note.peak * silence, end);
    return;
  }
  gain.setValueAtTime(note.peak, end - fall);
  gain.linearRampToValueAtTime(0, end);
}

function tone(context: BaseAudioContext, note: Note, begin: number, end: number): OscillatorNode {
  const oscillator = context.createOscillator();
  if (note.wave !== "noise") oscillator.type = note.wave;
  oscillator.frequency.setValueAtTime(note.hertz, begin);
  if (note.toHertz !== undefined && note.toHertz !== note.hertz) {
    oscillator.frequency.exponentialRampToValueAtTime(note.toHertz, end);
  }
  return oscillator;
}

/** Makes noise in a band around the note's pitch. */
function noise(context: BaseAudioContext, note: Note, out: AudioNode): AudioBufferSourceNode {
  const source = context.createBufferSource();
  source.buffer = hiss(context);
  source.loop = true;
  const band = context.createBiquadFilter();
  band.type = "bandpass";
  band.frequency.value = note.hertz;
  band.Q.value = 1.5;
  source.connect(band).connect(out);
  return source;
}

const hisses = new WeakMap<BaseAudioContext, AudioBuffer>();

/** Makes half a second of noise, always the same: a linear congruential generator (Park and Miller's). */
function hiss(context: BaseAudioContext): AudioBuffer {
  const kept = hisses.get(context);
  if (kept !== undefined) return kept;
  const buffer = context.createBuffer(1, context.sampleRate / 2, context.sampleRate);
  const samples = buffer.getChannelData(0);
  let state = 1;
  for (let place = 0; place < samples.length; place += 1) {
    state = (state * 16_807) % 2_147_483_647;
    samples[place] = (state / 2_147_483_647) * 2 - 1;
  }
  hisses.set(context, buffer);
  return buffer;
}
