/** Size of an element in CSS pixels, followed as it changes; known before it is first painted. */
import { type RefObject, useLayoutEffect, useState } from 'react';

export interface Size {
  width: number;
  height: number;
}

export function useSize(element: RefObject<Element | null>, before: Size): Size {
  const [size, setSize] = useState(before);
  useLayoutEffect(() => {
    const node = element.current;
    if (!node) return;
    const measure = () => {
      const [width, height] = [Math.max(100, node.clientWidth), Math.max(100, node.clientHeight)];
      setSize((known) => (known.width === width && known.height === height ? known : { width, height }));
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(node);
    return () => observer.disconnect();
  }, [element]);
  return size;
}
