/** Pages and drawings of the sheet, to jump to: on a phone the pages are long. */
import { useEffect, useState } from 'react';

interface Props {
  /** where the pages stand */
  box: { current: HTMLElement | null };
  drawings: readonly string[];
}

export function SheetJump({ box, drawings }: Props) {
  const [pages, setPages] = useState(0);
  // They are filled until they are full: how many there are is seen once they are drawn.
  useEffect(() => {
    const count = () => setPages(box.current?.querySelectorAll('.leaf').length ?? 0);
    const observer = new MutationObserver(count);
    count();
    if (box.current) observer.observe(box.current, { childList: true, subtree: true });
    return () => observer.disconnect();
  }, [box]);
  const go = (selector: string, index = 0) =>
    box.current?.querySelectorAll(selector)[index]?.scrollIntoView({ block: 'start' });
  return (
    <nav className="jump screen-only" aria-label="Parts of this screen">
      {Array.from({ length: pages }, (_, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a page is known by its number
        <button key={i} type="button" onClick={() => go('.leaf', i)}>
          Page {i + 1}
        </button>
      ))}
      {drawings.map((name) => (
        <button key={name} type="button" onClick={() => go(`[data-drawing="${name}"]`)}>
          {name === 'chart' ? 'Film chart' : `Drawing: ${name}`}
        </button>
      ))}
    </nav>
  );
}
