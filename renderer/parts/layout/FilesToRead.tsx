import css from "./FilesToRead.module.css";

interface FilesToReadProps {
  readonly files: readonly {
    readonly name: string;
    /** A description in a few words. */
    readonly what: string;
    /** Its size, in words. */
    readonly size: string;
    readonly text: string;
  }[];
}

/** Files before they are written; each opens to be read exactly as it will be. */
export function FilesToRead({ files }: FilesToReadProps) {
  return (
    <ul className={css.files}>
      {files.map(({ name, what, size, text }) => (
        <li key={name}>
          <details>
            <summary className={css.summary}>
              <span className="strong">{name}</span>
              <span className={`quiet ${css.what}`}>{what}</span>
              <span className={css.size}>{size}</span>
            </summary>
            {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
            <pre className={`small ${css.text}`} tabIndex={0}>
              {text}
            </pre>
          </details>
        </li>
      ))}
    </ul>
  );
}
