/** Consonants only: no id can spell a name or look like a derby number. */
const idLetters = "bcdfghjkmnpqrstvwxz";
const idLength = 10;

/** Draws `count` different ids (19¹⁰ are possible). */
export function drawIds(count: number, random: () => number): string[] {
  const ids = new Set<string>();
  while (ids.size < count) {
    const letters = Array.from(
      { length: idLength },
      () => idLetters[Math.floor(random() * idLetters.length)],
    );
    ids.add(letters.join(""));
  }
  return [...ids];
}
