/** Each figure of a drawing that is none, and what does not go together. */
import type { Impossible } from './impossible.ts';

export function Wrong({ unread, faults }: { unread: readonly string[]; faults: readonly Impossible[] }) {
  const odd = faults.filter(({ stops }) => !stops);
  const wrong = [...unread, ...faults.filter(({ stops }) => stops).map(({ text }) => text)];
  return (
    <>
      {wrong.length > 0 && (
        <ul className="wrong plain" role="status">
          {wrong.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      )}
      {odd.length > 0 && (
        <ul className="odd plain" role="status">
          {odd.map(({ text }) => (
            <li key={text}>{text}</li>
          ))}
        </ul>
      )}
    </>
  );
}
