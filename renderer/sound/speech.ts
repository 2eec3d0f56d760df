/** Speech, if the system has its own voice. Without one nothing is spoken, and the sounds are enough. */

/** Returns a voice of this computer for a language ("en"), or null. Voices from a server would need the internet. */
function voiceFor(language: string): SpeechSynthesisVoice | null {
  if (!("speechSynthesis" in globalThis)) return null;
  const wanted = language.toLowerCase().split("-")[0];
  const voices = speechSynthesis
    .getVoices()
    .filter((voice) => voice.localService && voice.lang.toLowerCase().split(/[-_]/)[0] === wanted);
  return voices.find((voice) => voice.default) ?? voices[0] ?? null;
}

/** Speaks `text`, `volume` 0 to 1; interrupts earlier speech. Returns true if there is a voice for it. */
export function speak(text: string, language: string, volume: number): boolean {
  const voice = voiceFor(language);
  if (voice === null) return false;
  const utterance = new SpeechSynthesisUtterance(text);
  utterance.voice = voice;
  utterance.lang = voice.lang;
  utterance.volume = volume;
  speechSynthesis.cancel();
  speechSynthesis.speak(utterance);
  return true;
}

/** Stops any speech. */
export function hush(): void {
  if ("speechSynthesis" in globalThis) speechSynthesis.cancel();
}
