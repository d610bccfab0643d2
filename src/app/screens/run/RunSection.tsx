/**
 * The running pair in section, as on the Fit screen: cut where the film of all is least, that side above. Gaps, and how
 * far the axis lies aside, by the one exaggeration; lengths true.
 */

import { useId, useMemo, useRef } from 'react';
import type { Design } from '../../../design/definition.ts';
import { fineText, type System } from '../../../design/units.ts';
import { metres, millimetres, radians, toSeats } from '../../../report/convert.ts';
import type { FilmReport } from '../../../report/film/definition.ts';
import type { RunFields } from '../../../report/film/fields.ts';
import { type SurfaceInMetres, seatLines } from '../../../report/inFrame.ts';
import { type Drawn, drawnPair, type Point } from '../../pictures/drawn.ts';
import { leaningOf } from '../../pictures/leaning.ts';
import { middleOf, SeatNotes } from '../../pictures/SeatNotes.tsx';
import { SectionBar } from '../../pictures/SectionBar.tsx';
import { SectionParts } from '../../pictures/SectionParts.tsx';
import { sectionFrame } from '../../pictures/sectionFrame.ts';
import { onScreen, type Placing, placing } from '../../pictures/sectionLayout.ts';
import { textWidth } from '../../pictures/textWidth.ts';
import { useSize } from '../../pictures/useSize.ts';
import { runningWanted } from './runningWanted.ts';

interface Props {
  fields: RunFields;
  /** the design the fields belong to */
  design: Design;
  factor: number;
  system: System;
  /** the warm state drawn, whose growth opens or closes the films; null: cold */
  warm: NonNullable<FilmReport['steady']> | null;
}

/** rad: where the section is cut, above the axis */
const UP = Math.PI / 2;
const measures = { width: textWidth };
/** px */
const SECOND_LINE = 18;

export function RunSection({ fields, design, factor, system, warm }: Props) {
  const svg = useRef<SVGSVGElement>(null);
  const id = useId();
  const size = useSize(svg, { width: 900, height: 420 });
  const least = fields.seats.reduce((thin, seat) => (seat.leastFilm < thin.leastFilm ? seat : thin));
  const drawn = useMemo(
    () => leaningPair(design, fields, radians(least.leastAngle), factor, warm),
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
        <SectionParts.Axes drawn={drawn} frame={frame} at={at} />
        <SeatNotes notes={notes} frame={frame} at={at} size={size} />
        <SectionBar perMm={at.scale * drawn.factor} size={size} system={system} />
      </svg>
      <figcaption>
        Cut at {angle}° (above) and {(angle + 180) % 360}°, where the film of the {least.name} seat is least
        {warm ? ', warm' : ''}. Gaps drawn ×{Math.round(drawn.factor).toLocaleString('en')}; dash-dot: the axis of the
        bush, and in dots that of the journal.
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

/** The pair as it runs, turned so that `angle` (rad) stands above the axis. */
export function leaningPair(
  design: Design,
  { pose }: RunFields,
  angle: number,
  factor: number,
  warm: Props['warm'],
): Drawn {
  const turn = UP - angle;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const turned = (x: number, y: number) => ({ x: x * cos - y * sin, y: x * sin + y * cos });
  const aside = turned(metres(pose.x), metres(pose.y));
  const tilt = turned(pose.tiltX, pose.tiltY);
  const roundTurned = (surface: SurfaceInMetres): SurfaceInMetres => ({
    ...surface,
    lobes: surface.lobes?.map((lobe) => ({ ...lobe, phase: lobe.phase + turn })),
  });
  const parts = toSeats({ conepair: 1, seats: design.seats }).map((seat) => {
    const growth = metres(warm?.seats.find(({ name }) => name === seat.name)?.growth ?? 0);
    return {
      ...seat,
      bush: roundTurned({ ...seat.bush, radius: seat.bush.radius + growth / Math.cos(seat.bush.halfAngle) }),
      journal: roundTurned(seat.journal),
    };
  });
  const leaning = leaningOf(parts, { ...aside, z: metres(pose.z), tiltX: tilt.x, tiltY: tilt.y });
  // The film of the drawing is that of a journal on the axis; under a load one side is always thinner.
  const seats = parts.map((part) => ({ ...seatLines(part), wanted: runningWanted(design, part.name) }));
  return drawnPair(seats, metres(pose.z), factor, leaning);
}
