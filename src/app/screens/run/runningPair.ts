/** The running pair for the pictures: its lines, how it leans, and the factor its gaps are drawn by. */
import { useMemo } from 'react';
import { useStore } from 'zustand';
import type { Design } from '../../../design/definition.ts';
import type { Metres, Radians } from '../../../design/dimension.ts';
import { metres, toSeats } from '../../../report/convert.ts';
import type { FilmReport } from '../../../report/film/definition.ts';
import type { RunFields } from '../../../report/film/fields.ts';
import { type SeatLines, type SurfaceInMetres, seatLines } from '../../../report/inFrame.ts';
import { type Drawn, drawnAt } from '../../pictures/drawn.ts';
import { factorFor } from '../../pictures/factor.ts';
import { type Leaning, leaningOf } from '../../pictures/leaning.ts';
import { useMedia } from '../../pictures/useMedia.ts';
import { type Scale, useScale } from '../../pictures/useScale.ts';
import type { Work } from '../../state/store.ts';

const UP = Math.PI / 2;

type Warm = FilmReport['steady'];

export interface RunningPair {
  seats: SeatLines[];
  position: Metres;
  leaning: Leaning | null;
}

/** The pair as it runs, turned so that `angle` stands above the axis; `warm`: grown as in that state. */
export function runningPair(design: Design, { pose }: RunFields, angle: Radians, warm: Warm): RunningPair {
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
  return {
    seats: parts.map(seatLines),
    position: metres(pose.z),
    leaning: leaningOf(parts, { ...aside, z: metres(pose.z), tiltX: tilt.x, tiltY: tilt.y }),
  };
}

export const leaningAt = ({ seats, position, leaning }: RunningPair, factor: number): Drawn =>
  drawnAt(seats, position, factor, leaning);

/** The greatest factor up to the one asked for; the same however the pair is turned. */
export const suiting = ({ seats, position, leaning }: RunningPair, asked: number): number =>
  factorFor(seats, position, asked, leaning);

interface Running {
  fields: RunFields;
  design: Design;
  warm: Warm;
}

/** One factor for section and solid picture, held while anything changes; `running`: null before there is any. */
export function useRunScale(work: Work, running: Running | null): Scale {
  const { factor: asked, piece, scaleLocked: locked } = useStore(work.store);
  const still = useMedia('(prefers-reduced-motion: reduce)');
  const { fields, design, warm } = running ?? {};
  const suits = useMemo(
    () => (fields && design ? suiting(runningPair(design, fields, UP, warm ?? null), asked) : asked),
    [fields, design, warm, asked],
  );
  const of = `${piece} ${asked}${running ? ' running' : ''}`;
  return useScale({ suits, standing: fields, of, locked, still, held: () => work.dragging() });
}
