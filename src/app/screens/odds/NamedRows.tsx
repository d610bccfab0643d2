/** A table whose rows are named by their first column. */
export function NamedRows({ name, head, rows }: { name: string; head: readonly string[]; rows: readonly string[][] }) {
  return (
    <div className="table">
      <table className={name}>
        <thead>
          <tr>
            {head.map((title) => (
              <th key={title} scope="col">
                {title}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(([first, ...others]) => (
            <tr key={first}>
              <th scope="row">{first}</th>
              {others.map((text, i) => (
                <td key={head[i + 1]}>{text}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
