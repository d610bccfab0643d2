/** A section to be taken hold of: the ground that zooms and pans, the journal as a slider, bush, films and axes. */
import type { ReactNode, RefObject } from 'react';
import { micrometres } from '../../report/convert.ts';
import type { FitReport } from '../../report/fit/definition.ts';
import type { axialValues } from './axialValues.ts';
import type { Drawn } from './drawn.ts';
import { SectionParts } from './SectionParts.tsx';
import type { SectionFrame } from './sectionFrame.ts';
import type { Placing } from './sectionLayout.ts';
import type { useAxialMove } from './useMove.ts';
import type { useView } from './useView.ts';

interface Props {
  svg: RefObject<SVGSVGElement | null>;
  id: string;
  /** what it is, for who does not see it */
  label: string;
  seen: Pick<ReturnType<typeof useView>, 'view' | 'handlers'>;
  move: ReturnType<typeof useAxialMove>;
  fit: FitReport;
  /** what the slider says of itself */
  values: ReturnType<typeof axialValues>;
  drawn: Drawn;
  frame: SectionFrame;
  at: Placing;
  /** of a drawing in a room of its own size */
  own?: { viewBox: string; style: { height: number } };
  /** where the journal stood when it was taken hold of */
  ghost?: Drawn | null;
  children: ReactNode;
}

export function SectionDrawing({
  svg,
  id,
  label,
  seen,
  move,
  fit,
  values,
  drawn,
  frame,
  at,
  own,
  ghost,
  children,
}: Props) {
  return (
    <svg
      ref={svg}
      {...seen.handlers}
      {...own}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: the drawing takes the keys that zoom and pan it
      tabIndex={0}
      className={seen.view.zoom > 1 ? 'section zoomed' : 'section'}
      role="group"
      aria-label={`${label}; plus, minus and 0 zoom`}
    >
      <g
        {...move.handlers}
        className="journal"
        role="slider"
        tabIndex={0}
        aria-label="Axial position of the journal"
        aria-valuenow={micrometres(fit.position)}
        {...values}
        onKeyDown={move.onKeyDown}
      >
        <SectionParts.Journal frame={frame} at={at} id={id} moved={fit.position * drawn.factor} />
      </g>
      <SectionParts.Bush frame={frame} at={at} id={id} />
      <SectionParts.Films drawn={drawn} frame={frame} at={at} id={id} />
      {ghost && <SectionParts.Ghost drawn={ghost} at={at} />}
      <SectionParts.Axes drawn={drawn} frame={frame} at={at} />
      {children}
    </svg>
  );
}
