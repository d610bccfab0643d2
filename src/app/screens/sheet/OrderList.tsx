/**
 * The order of work as a check list to be ticked by hand: parts short enough to stay whole, each under its own heading.
 */
import type { CutReport } from '../../../report/cut/definition.ts';

/** The most of one part of the list; two columns of them are a third of a page. */
const TOGETHER = 26;

export function OrderList({ work }: { work: CutReport['work'] }) {
  const count = Math.ceil(work.length / TOGETHER);
  const size = Math.ceil(work.length / count);
  const parts = Array.from({ length: count }, (_, k) => ({
    first: k * size,
    items: work.slice(k * size, (k + 1) * size),
  }));
  return parts.map(({ first, items }) => (
    <div key={first} className="block order-of-work">
      <h3>Order of work{first > 0 && `, from ${first + 1}`} (common practice)</h3>
      <ol start={first + 1}>
        {items.map(({ id, text, done }, i) => (
          <li key={id}>
            <span className="tick-box">{done ? '✓' : ''}</span>
            <span className="number">{first + i + 1}.</span> <span>{text}</span>
          </li>
        ))}
      </ol>
    </div>
  ));
}
