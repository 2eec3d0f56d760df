/** Speech, where the system brings a voice of its own. Without one nothing is said, and the sounds tell enough. */

/** A voice of this machine for a language ("en"), or null. Voices that a server makes would need the internet. */
function voiceFor(language: string): SpeechSynthesisVoice | null {
  if (!("speechSynthesis" in globalThis)) return null;
  const wanted = language.toLowerCase().split("-")[0];
  const voices = speechSynthesis
    .getVoices()
    .filter((voice) => voice.localService && voice.lang.toLowerCase().split(/[-_]/)[0] === wanted);
  return voices.find((voice) => voice.default) ?? voices[0] ?? null;
}

/**
 * Says `text`, `volume` 0 to 1; whatever is still being said gives way. Returns whether there is a voice for it.
 */
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

/** Stops whatever is being said. */
export function hush(): void {
  if ("speechSynthesis" in globalThis) speechSynthesis.cancel();
}
