/** What the colours of the scene mean, as ordinary text below it. */
import './sceneLegend.css';
import { fineText, fineUnit, type System } from '../../design/units.ts';
import { metres, millimetres } from '../../report/convert.ts';
import { BLUE } from './blue.ts';
import { CLASS_TEXT } from './filmClass.ts';
import { CLASS_FILL, cssColour, filmColour } from './filmColour.ts';
import { roundAbove } from './sceneGeometry.ts';

/** The scale's far end (m): the greatest film rounded up in the user's unit. */
export function scaleEnd(greatest: number, system: System): number {
  const unit = metres(fineUnit(system).size);
  return roundAbove(greatest / unit) * unit;
}

const STOPS = Array.from({ length: 17 }, (_, i) => cssColour(filmColour(i, 16))).join(', ');

const CLASSES = ['thin', 'right', 'thick'] as const;

interface Props {
  /** whether there are seats of which a film is wanted, and of which none is */
  wanted: boolean;
  plain: boolean;
  /** m */
  max: number;
  system: System;
  dark: boolean;
  /** Thickness of blue (m) where prints are shown instead of the film. */
  blue: number | null;
}

export function SceneLegend({ wanted, plain, max, system, dark, blue }: Props) {
  return (
    <div className="stage-legend">
      {blue === null ? (
        <>
          {wanted && <WantedMarks />}
          {plain && <FilmScale max={max} system={system} />}
        </>
      ) : (
        <Mark
          colour={cssColour(dark ? BLUE.dark : BLUE.light)}
          text={`Within ${fineText(millimetres(blue), system)} when pressed home`}
        />
      )}
      {/* Always there, so that a touch does not move the picture. */}
      <MetalMarks />
    </div>
  );
}

type Words = Record<(typeof CLASSES)[number], string>;

interface MarksProps {
  of?: Partial<Words>;
  says?: Words;
}

/** What of a film wanted each colour means; `of`: from where to where it is so, where that is told. */
export function WantedMarks({ of = {}, says = CLASS_TEXT }: MarksProps) {
  return CLASSES.map((kind) => (
    <Mark key={kind} kind={kind} colour={CLASS_FILL[kind]} text={`${says[kind]}${of[kind] ?? ''}`} />
  ));
}

/** And of metal on metal. */
export function MetalMarks() {
  return (
    <>
      <Mark colour={CLASS_FILL.touch} text={CLASS_TEXT.touch} />
      <Mark colour={CLASS_FILL.pressed} text={CLASS_TEXT.pressed} kind="pressed" />
    </>
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

/** The lines of each class, as in the picture. */
const LINES = {
  pressed: [45, -45]
    .map((turn) => `repeating-linear-gradient(${turn}deg, transparent 0 3px, rgb(30 25 20 / 0.5) 3px 4px)`)
    .join(', '),
  thin: 'repeating-linear-gradient(90deg, transparent 0 3px, rgb(30 25 20 / 0.5) 3px 4px)',
  rubs: [90, 0]
    .map((turn) => `repeating-linear-gradient(${turn}deg, transparent 0 2px, rgb(30 25 20 / 0.6) 2px 3px)`)
    .join(', '),
  thick: 'repeating-linear-gradient(0deg, transparent 0 3px, rgb(30 25 20 / 0.5) 3px 4px)',
} as const;

/** `colour`: of a sheet of styles. */
export function Mark({ colour, text, kind }: { colour: string; text: string; kind?: string }) {
  const lines = LINES[kind as keyof typeof LINES];
  return (
    <span className="stage-mark">
      <span
        aria-hidden="true"
        style={{ background: lines ? `${lines}, ${colour}` : colour, border: '1px solid currentColor' }}
      />
      {text}
    </span>
  );
}
