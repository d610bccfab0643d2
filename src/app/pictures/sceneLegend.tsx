/** What the colours of the scene mean, as ordinary text below it. */
import { fineText, fineUnit, type System } from '../../design/units.ts';
import { metres, millimetres } from '../../report/convert.ts';
import { BLUE } from './blue.ts';
import { cssColour, filmColour, INTERFERENCE, touchColour } from './filmColour.ts';
import { roundAbove } from './sceneGeometry.ts';

/** The scale's far end (m): the greatest film rounded up in the user's unit. */
export function scaleEnd(greatest: number, system: System): number {
  const unit = metres(fineUnit(system).size);
  return roundAbove(greatest / unit) * unit;
}

const STOPS = Array.from({ length: 17 }, (_, i) => cssColour(filmColour(i, 16))).join(', ');

interface Props {
  /** m */
  max: number;
  system: System;
  dark: boolean;
  /** Thickness of blue (m) where prints are shown instead of the film. */
  blue: number | null;
}

export function SceneLegend({ max, system, dark, blue }: Props) {
  return (
    <div className="stage-legend">
      {blue === null ? (
        <FilmScale max={max} system={system} />
      ) : (
        <Mark
          colour={cssColour(dark ? BLUE.dark : BLUE.light)}
          text={`Within ${fineText(millimetres(blue), system)} when pressed home`}
        />
      )}
      {/* Always there, so that a touch does not move the picture. */}
      <Mark colour={cssColour(touchColour(dark))} text="Touching" />
      <Mark colour={cssColour(INTERFERENCE)} text="Pressed in" striped />
    </div>
  );
}

function FilmScale({ max, system }: { max: number; system: System }) {
  // A scale from nothing to nothing tells nothing.
  if (fineText(millimetres(max), system) === fineText(0, system)) return <span>Film: next to none</span>;
  return (
    <span className="stage-scale">
      Film {fineText(0, system)}
      <span
        aria-hidden="true"
        style={{ border: '1px solid currentColor', background: `linear-gradient(to right, ${STOPS})` }}
      />
      {fineText(millimetres(max), system)}
    </span>
  );
}

/** White over red, a quarter of it. */
const STRIPES = 'repeating-linear-gradient(45deg, transparent 0 4px, rgb(255 255 255 / 0.6) 4px 6px)';

function Mark({ colour, text, striped = false }: { colour: string; text: string; striped?: boolean }) {
  return (
    <span className="stage-mark">
      <span
        aria-hidden="true"
        style={{
          background: striped ? `${STRIPES}, ${colour}` : colour,
          border: '1px solid currentColor',
        }}
      />
      {text}
    </span>
  );
}
