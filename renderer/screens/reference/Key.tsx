import css from "./Reference.module.css";

/** Shows a key in its short form, one group of digits after the other, as it is read aloud. */
export function Key({ digits, small = false }: { readonly digits: string; readonly small?: boolean }) {
  return (
    <code className={css.key} data-small={small}>
      {digits}
    </code>
  );
}
