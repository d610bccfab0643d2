/** A drawing on the Sheet, with a button that saves it by itself. */
import { type ReactNode, useRef } from 'react';
import { offer } from '../files.ts';
import { svgText } from './svgText.ts';

export function Drawing({ name, children }: { name: string; children: ReactNode }) {
  const box = useRef<HTMLDivElement>(null);
  return (
    <div className="drawing">
      <div ref={box}>{children}</div>
      <button type="button" className="screen-only" onClick={() => offer(`${name}.svg`, svgText(box.current!.querySelector('svg')!), 'image/svg+xml')}>
        Save the {name} as SVG
      </button>
    </div>
  );
}
