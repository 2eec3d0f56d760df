import css from "./KeyHint.module.css";

interface KeyHintProps {
  /** Keys pressed together, joined by "+": "Alt+3", "Enter". */
  readonly keys: string;
  /** The effect of the keys; left out if the text beside them says it. */
  readonly does?: string;
}

/** A shortcut, shown where it works. */
export function KeyHint({ keys, does }: KeyHintProps) {
  return (
    <span className={`small ${css.hint}`}>
      <span className={css.keys}>
        {keys.split("+").map((key) => (
          <kbd key={key}>{key}</kbd>
        ))}
      </span>
      {does !== undefined && <span>{does}</span>}
    </span>
  );
}
