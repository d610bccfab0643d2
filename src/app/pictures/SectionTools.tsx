/** What can be asked of the section below it; the same while the journal moves. */
import { memo } from 'react';
import { useStore } from 'zustand';
import type { Part } from '../../design/definition.ts';
import type { Work } from '../state/store.ts';
import { Hand, Tools } from './Hand.tsx';
import { timesText } from './timesText.ts';
import { ZoomButtons } from './ZoomButtons.tsx';

interface Props {
  work: Work;
  /** the factor that can be kept; null: it does not follow what moves */
  factor: number | null;
  /** the part whose dimensions are shown */
  part: Part | 'none';
  setPart(part: Part | 'none'): void;
  zoom: { zoomIn(): void; zoomOut(): void; whole(): void };
  /** what the picture shows besides */
  hint: string | null;
}

const SHOWN = { bush: 'Bush', journal: 'Journal', none: 'None' } as const;

export const SectionTools = memo(function SectionTools({ work, factor, part, setPart, zoom, hint }: Props) {
  return (
    <Tools>
      {factor !== null && <ScaleLock work={work} factor={factor} />}
      <fieldset className="buttons">
        <legend className="visually-hidden">Dimensions</legend>
        {(Object.keys(SHOWN) as (keyof typeof SHOWN)[]).map((name) => (
          <button key={name} type="button" aria-pressed={part === name} onClick={() => setPart(name)}>
            {SHOWN[name]}
          </button>
        ))}
      </fieldset>
      <ZoomButtons {...zoom} />
      {hint && <span className="hint">{hint}</span>}
      <Hand>
        <span className="touch-only">Two fingers zoom the drawing; a finger on the journal moves it.</span>
        <span className="mouse-only">
          Ctrl and the wheel zoom; after a click on the drawing the wheel alone does, and + − 0. On the journal: arrows
          move it, Page Up and Page Down go to the next touch or film.
        </span>
      </Hand>
    </Tools>
  );
});

function ScaleLock({ work, factor }: { work: Work; factor: number }) {
  const locked = useStore(work.store, (state) => state.scaleLocked);
  return (
    <button
      type="button"
      aria-pressed={locked}
      onClick={() => work.store.setState({ scaleLocked: !locked })}
      title="Otherwise the factor follows what stands there, once it stands still"
    >
      Keep {timesText(factor)}
    </button>
  );
}
