const width = 100;

/** Wraps a paragraph into lines that any editor shows whole; markdown reads the same. */
export function wrapped(text: string): string {
  const lines: string[] = [];
  for (const word of text.split(/\s+/)) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= width) lines.push(`${lines.pop()} ${word}`);
    else lines.push(word);
  }
  return lines.join("\n");
}
