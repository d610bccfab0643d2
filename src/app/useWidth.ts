/** Width of an element in CSS pixels, followed as it changes. */
import { type RefObject, useEffect, useState } from 'react';

export function useWidth(element: RefObject<HTMLElement | null>, before: number): number {
  const [width, setWidth] = useState(before);
  useEffect(() => {
    const node = element.current;
    if (!node) return;
    const observer = new ResizeObserver(() => setWidth(Math.max(240, node.clientWidth)));
    observer.observe(node);
    return () => observer.disconnect();
  }, [element]);
  return width;
}
