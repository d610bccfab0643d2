/** What the colours of the scene mean, as ordinary text over it. */
import { type CSSProperties, useSyncExternalStore } from 'react';
import { fineText, fineUnit, type System } from '../../design/units.ts';
import { SAME } from '../../engine/contact/film.ts';
import { metres, millimetres } from '../../report/convert.ts';
import { BLUE } from './blue.ts';
import type { Drawing } from './drawing.ts';
import { cssColour, filmColour, INTERFERENCE, touchColour } from './filmColour.ts';
import { roundAbove, touches } from './sceneGeometry.ts';

export const panel = (dark: boolean): CSSProperties => ({
  background: dark ? 'rgb(36 43 51 / 0.92)' : 'rgb(255 252 245 / 0.92)',
  color: dark ? '#e9e4d8' : '#2a2723',
  border: `1px solid ${dark ? '#7c8793' : '#8a8172'}`,
  borderRadius: 4,
  padding: '4px 10px',
  font: 'inherit',
  fontSize: '0.85rem',
});

/** The scale's far end (m): the greatest film rounded up in the user's unit. */
export function scaleEnd(greatest: number, system: System): number {
  const unit = metres(fineUnit(system).size);
  return roundAbove(greatest / unit) * unit;
}

const STOPS = Array.from({ length: 17 }, (_, i) => cssColour(filmColour(i, 16))).join(', ');

interface Props {
  drawing: Drawing;
  /** m */
  max: number;
  system: System;
  dark: boolean;
  /** Thickness of blue (m) where prints are shown instead of the film. */
  blue: number | null;
}

export function SceneLegend({ drawing, max, system, dark, blue }: Props) {
  const touching = useSyncExternalStore(drawing.subscribe, () =>
    drawing.now().seats.some((seat) => touches(seat).length > 0),
  );
  const pressed = useSyncExternalStore(drawing.subscribe, () =>
    drawing.now().seats.some((seat) => seat.film.some(({ film }) => film < -SAME)),
  );
  return (
    <div
      style={{
        ...panel(dark),
        position: 'absolute',
        bottom: 8,
        left: 8,
        maxWidth: 'calc(100% - 16px)',
        boxSizing: 'border-box',
        pointerEvents: 'none',
        fontVariantNumeric: 'tabular-nums',
      }}
    >
      {blue === null ? (
        <FilmScale max={max} system={system} />
      ) : (
        <Mark
          colour={cssColour(dark ? BLUE.dark : BLUE.light)}
          text={`Within ${fineText(millimetres(blue), system)} when pressed home`}
        />
      )}
      {touching && <Mark colour={cssColour(touchColour(dark))} text="Touching" />}
      {pressed && <Mark colour={cssColour(INTERFERENCE)} text="Pressed into each other" />}
    </div>
  );
}

function FilmScale({ max, system }: { max: number; system: System }) {
  // A scale from nothing to nothing tells nothing.
  if (fineText(millimetres(max), system) === fineText(0, system)) return <div>Film: next to none</div>;
  return (
    <>
      <div>Film</div>
      <div
        aria-hidden="true"
        style={{
          width: 180,
          maxWidth: '100%',
          height: 10,
          border: '1px solid currentColor',
          background: `linear-gradient(to right, ${STOPS})`,
        }}
      />
      <div style={{ width: 180, maxWidth: '100%', display: 'flex', justifyContent: 'space-between', gap: 12 }}>
        <span>{fineText(0, system)}</span>
        <span>{fineText(millimetres(max), system)}</span>
      </div>
    </>
  );
}

function Mark({ colour, text }: { colour: string; text: string }) {
  return (
    <div style={{ display: 'flex', alignItems: 'center', gap: 6 }}>
      <span
        aria-hidden="true"
        style={{ width: 12, height: 12, background: colour, border: '1px solid currentColor' }}
      />
      {text}
    </div>
  );
}
