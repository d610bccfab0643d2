/**
 * The longitudinal section, as a drawing office would show it: both parts hatched and dimensioned, the films open
 * between them.
 */

import { lazy, type ReactNode, Suspense, useId, useMemo, useRef, useState } from 'react';
import type { Design, Part } from '../../design/definition.ts';
import { angleNamed, fineText, type System } from '../../design/units.ts';
import type { BeliefReport } from '../../report/belief/definition.ts';
import { filmTold, sayers } from '../../report/belief/filmTold.ts';
import { millimetres } from '../../report/convert.ts';
import type { FitReport } from '../../report/fit/definition.ts';
import { useAngles } from '../state/angles.ts';
import type { Work } from '../state/store.ts';
import { axialValues } from './axialValues.ts';
import type { Dimensions } from './dimensions.ts';
import type { Drawn } from './drawn.ts';
import { noteEnd } from './holding.ts';
import { LetGo } from './LetGo.tsx';
import { SeatNotes } from './SeatNotes.tsx';
import { SectionBar } from './SectionBar.tsx';
import { SectionDrawing } from './SectionDrawing.tsx';
import { SectionParts } from './SectionParts.tsx';
import { pullText, SectionPull } from './SectionPull.tsx';
import { SectionTools } from './SectionTools.tsx';
import { type SectionFrame, sectionFrame } from './sectionFrame.ts';
import { angleOnScreen, onScreen, type Placing, placing, seenThrough } from './sectionLayout.ts';
import { textWidth } from './textWidth.ts';
import { timesText } from './timesText.ts';
import { useDimensions } from './useDimensions.ts';
import { useAxialMove } from './useMove.ts';
import type { Scale } from './useScale.ts';
import { useSize } from './useSize.ts';
import { useView } from './useView.ts';

interface Props {
  design: Design;
  drawn: Drawn;
  fit: FitReport;
  system: System;
  work: Work;
  /** the part whose dimensions are shown at first */
  first?: Part | 'none';
  /** how far the films may be other than drawn, where something was read */
  belief?: BeliefReport | null;
  /** where the journal stood when it was taken hold of */
  ghost?: Drawn | null;
  /** the factor follows what moves (useScale.ts): what it was before it changed by itself, while that is said */
  scale?: Pick<Scale, 'before'> | null;
  /** which picture is shown, where it takes turns with another */
  which?: ReactNode;
}

const measures = { width: textWidth };

/** Fit opens without them. */
const SectionDimensions = lazy(() => import('./SectionDimensions.tsx'));

export function Section({
  design,
  drawn,
  fit,
  system,
  work,
  first = 'bush',
  belief = null,
  ghost = null,
  scale = null,
  which,
}: Props) {
  const svg = useRef<SVGSVGElement>(null);
  const id = useId();
  const [part, setPart] = useState<Part | 'none'>(first);
  const size = useSize(svg, { width: 900, height: 500 });
  const frame = useMemo(() => sectionFrame(drawn), [drawn]);
  const { dimensions, note } = useDimensions(work, design, drawn, part, system);
  const whole = placing(frame, dimensions, size, measures);

  // As it is drawn when it is taken hold of.
  const perPixel = () => 1 / (at.scale * drawn.factor);
  const journalMove = useAxialMove(work, fit, perPixel);
  const seen = useView(svg, size, journalMove.cancel);
  const { view, zoom } = seen;
  const at = seenThrough(whole, view, size);
  const unit = system === 'inch' ? 'inches' : 'mm';
  return (
    <figure className="picture">
      <div className="drawn">
        <SectionDrawing
          {...{ svg, id, fit, drawn, frame, at, ghost }}
          label="Longitudinal section of the pair; drag the journal along its axis"
          seen={seen}
          move={journalMove}
          values={axialValues(fit, system)}
        >
          {!drawn.pulled && <SectionParts.Moves frame={frame} at={at} />}
          {dimensions && !drawn.pulled && (
            <Suspense fallback={null}>
              <SectionDimensions frame={frame} dimensions={dimensions} at={at} size={size} measures={measures} />
            </Suspense>
          )}
          <Notes
            design={design}
            drawn={drawn}
            fit={fit}
            belief={belief}
            frame={frame}
            dimensions={dimensions}
            part={part}
            at={at}
            size={size}
            system={system}
          />
          <SectionPull
            {...{ work, drawn, frame, at, size, system }}
            said={!dimensions && !drawn.pulled}
            whole={view.zoom === 1}
            along={journalMove}
          />
          <SectionBar perMm={at.scale * drawn.factor} size={size} system={system} />
        </SectionDrawing>
        <LetGo work={work} />
      </div>
      <figcaption>
        {which}
        <span className="gaps">
          Gaps drawn {timesText(drawn.factor, scale?.before)}
          {dimensions && whole.level !== 'none' && ` · dimensions of the ${part} in ${unit}`}
          {note !== '' && whole.level !== 'none' && ` · in dashes: ${note}`}
        </span>
        <SectionTools
          work={work}
          factor={scale && drawn.factor}
          part={part}
          setPart={setPart}
          zoom={zoom}
          hint={!scale && drawn.pulled ? pullText(system) : null}
        />
      </figcaption>
    </figure>
  );
}

interface NotesProps extends Omit<Props, 'work' | 'first' | 'ghost' | 'scale' | 'which'> {
  frame: SectionFrame;
  dimensions: Dimensions | null;
  part: Part | 'none';
  at: Placing;
  size: { width: number; height: number };
}

function Notes({ design, drawn, fit, belief, frame, dimensions, part, at, size, system }: NotesProps) {
  const way = useAngles();
  const notes = fit.seats.map((seat, i) => {
    const angle = dimensions?.angles[i];
    const halfAngle = part === 'none' ? 0 : design.seats[i]![part].halfAngle;
    // Where the angle has no room in the drawing it stands here.
    const drawnThere = !angle || angleOnScreen(angle, at, measures);
    const told = drawn.pulled ? null : filmTold(belief ?? null, fit, seat.name, system);
    return {
      name: seat.name,
      film: drawn.pulled
        ? filmText(leastAround(drawn, i), system)
        : told?.drawn === null
          ? told.text
          : `${filmText(seat.leastFilm, system)}${told ? ' as drawn' : ''}`,
      ...(told && told.drawn !== null && { said: `${sayers(belief!)} ${told.text}` }),
      taper: drawnThere ? (halfAngle === 0 ? 'straight' : '') : angleNamed(halfAngle, way),
      at: onScreen(at, noteEnd(drawn, i), 1),
    };
  });
  return <SeatNotes notes={notes} frame={frame} at={at} size={size} />;
}

/** Least film (mm) of a seat all round, the journal pulled aside until something holds it. */
function leastAround(drawn: Drawn, seat: number): number | null {
  const { name, film } = drawn.seats[seat]!;
  if (film.length === 0) return null;
  if (drawn.forces.some((force) => force.seat === name)) return 0;
  const sections = drawn.at
    ? Array.from({ length: ROUND }, (_, k) => drawn.at!((2 * Math.PI * k) / ROUND))
    : [drawn.seats];
  const least = Math.min(...sections.flatMap((seats) => seats[seat]!.film.map((place) => place.film)));
  return millimetres(least);
}

/** Half sections looked at round a seat. */
const ROUND = 48;

/** Touching is said, for a film of nothing and one too thin to tell look the same in figures. */
const filmText = (film: number | null, system: System) =>
  film === null ? 'apart' : Math.abs(film) <= 1e-9 ? 'touches' : fineText(film, system);
