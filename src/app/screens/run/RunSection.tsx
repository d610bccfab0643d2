/**
 * The running pair in section, as on the Fit screen: cut where the film of all is least, that side above. Gaps, and how
 * far the axis lies aside, by the one exaggeration; lengths true.
 */

import { useId, useMemo, useRef } from 'react';
import type { Design } from '../../../design/definition.ts';
import { fineText, type System } from '../../../design/units.ts';
import { millimetres, radians } from '../../../report/convert.ts';
import type { FilmReport } from '../../../report/film/definition.ts';
import type { RunFields } from '../../../report/film/fields.ts';
import type { Drawn, Point } from '../../pictures/drawn.ts';
import { FilmPatterns } from '../../pictures/FilmPaint.tsx';
import { middleOf, SeatNotes } from '../../pictures/SeatNotes.tsx';
import { SectionBar } from '../../pictures/SectionBar.tsx';
import { SectionParts } from '../../pictures/SectionParts.tsx';
import { sectionFrame } from '../../pictures/sectionFrame.ts';
import { onScreen, type Placing, placing } from '../../pictures/sectionLayout.ts';
import { textWidth } from '../../pictures/textWidth.ts';
import { timesText } from '../../pictures/timesText.ts';
import type { Scale } from '../../pictures/useScale.ts';
import { useSize } from '../../pictures/useSize.ts';
import { BeyondDrawn, reachesBeyond } from './BeyondDrawn.tsx';
import { leaningAt, runningPair } from './runningPair.ts';

interface Props {
  fields: RunFields;
  /** the design the fields belong to */
  design: Design;
  scale: Scale;
  system: System;
  /** the warm state drawn, whose growth opens or closes the films; null: cold */
  warm: NonNullable<FilmReport['steady']> | null;
}

const measures = { width: textWidth };
/** px */
const SECOND_LINE = 18;

export function RunSection({ fields, design, scale, system, warm }: Props) {
  const { factor, before } = scale;
  const svg = useRef<SVGSVGElement>(null);
  const id = useId();
  const size = useSize(svg, { width: 900, height: 420 });
  const least = fields.seats.reduce((thin, seat) => (seat.leastFilm < thin.leastFilm ? seat : thin));
  const drawn = useMemo(
    () => leaningAt(runningPair(design, fields, radians(least.leastAngle), warm), factor),
    [design, fields, least.leastAngle, factor, warm],
  );
  const frame = useMemo(() => sectionFrame(drawn), [drawn]);
  const at = withSecondLine(placing(frame, null, { ...size, height: size.height - SECOND_LINE }, measures));
  const notes = drawn.seats.map((seat, i) => ({
    name: seat.name,
    film: filmText(seat, system),
    taper: `opposite ${filmText(drawn.below[i]!, system)}`,
    at: onScreen(at, thinnestOf(seat), 1),
  }));
  const angle = Math.round(least.leastAngle) % 360;
  return (
    <figure className="picture run-section">
      <svg
        ref={svg}
        className="section"
        role="img"
        aria-label={`Section of the running pair, cut at ${angle}°: ${notes.map(({ name, film, taper }) => `${name} ${film}, ${taper}`).join('; ')}`}
      >
        <SectionParts.Journal frame={frame} at={at} id={id} moved={fields.pose.z * drawn.factor} />
        <SectionParts.Bush frame={frame} at={at} id={id} />
        <SectionParts.Films drawn={drawn} frame={frame} at={at} id={id} />
        <FilmPatterns id={`${id}beyond`} />
        <BeyondDrawn drawn={drawn} at={at} id={`${id}beyond`} />
        <SectionParts.Axes drawn={drawn} frame={frame} at={at} />
        <SeatNotes notes={notes} frame={frame} at={at} size={size} />
        <SectionBar perMm={at.scale * drawn.factor} size={size} system={system} />
      </svg>
      <figcaption>
        Cut at {angle}° (above) and {(angle + 180) % 360}°, where the film of the {least.name} seat is least
        {warm ? ', warm' : ''}. Gaps drawn {timesText(drawn.factor, before)}; dash-dot: the axis of the bush, and in
        dots that of the journal.
        {reachesBeyond(drawn) && ' In dashes: how far the journal truly reaches, moved so much less than it is drawn.'}
      </figcaption>
    </figure>
  );
}

/** Lower by one line, which the notes take. */
const withSecondLine = (at: Placing): Placing => ({
  ...at,
  level: 'sizes',
  notesEnd: at.notesEnd + SECOND_LINE,
  middle: { ...at.middle, y: at.middle.y + SECOND_LINE },
});

/** The least film along this half of the section. */
function filmText({ film }: Drawn['seats'][number], system: System): string {
  return film.length === 0 ? 'apart' : fineText(millimetres(Math.min(...film.map((place) => place.film))), system);
}

/** Where the film is least along this half, half way across it. */
function thinnestOf(seat: Drawn['seats'][number]): Point {
  if (seat.film.length === 0) return middleOf(seat);
  const { bush, journal } = seat.film.reduce((thin, place) => (place.film < thin.film ? place : thin));
  return [(bush[0] + journal[0]) / 2, (bush[1] + journal[1]) / 2];
}
