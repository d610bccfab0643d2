/** Size of an element in CSS pixels, followed as it changes. */
import { type RefObject, useEffect, useState } from 'react';

export interface Size {
  width: number;
  height: number;
}

export function useSize(element: RefObject<Element | null>, before: Size): Size {
  const [size, setSize] = useState(before);
  useEffect(() => {
    const node = element.current;
    if (!node) return;
    const observer = new ResizeObserver(() =>
      setSize({ width: Math.max(200, node.clientWidth), height: Math.max(100, node.clientHeight) }),
    );
    observer.observe(node);
    return () => observer.disconnect();
  }, [element]);
  return size;
}
