interface TableHeadProps {
  /** A word for each column. */
  readonly heads: readonly string[];
  /** True where the first column names the rows and needs no word. */
  readonly corner?: boolean;
}

/** The head of a table on a page, a word for each column. */
export function TableHead({ heads, corner = false }: TableHeadProps) {
  return (
    <thead>
      <tr>
        {corner && <td />}
        {heads.map((head) => (
          <th key={head} scope="col">
            {head}
          </th>
        ))}
      </tr>
    </thead>
  );
}
