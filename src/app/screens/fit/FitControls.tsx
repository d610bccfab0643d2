/** Every quantity of the pair, with the position and the pictures' own settings above them. */
import { useState } from 'react';
import { useStore } from 'zustand';
import { angleText } from '../../../design/units.ts';
import type { FitReport } from '../../../report/fit/definition.ts';
import ControlGroup from '../../controls/ControlGroup.tsx';
import { DrawnFactorContext, WorkContext } from '../../controls/context.ts';
import type { Control } from '../../controls/controls.tsx';
import type { Work } from '../../state/store.ts';
import { AddSeat, SeatTools } from './SeatTools.tsx';
import { WhereZero } from './WhereZero.tsx';

const SPINDLE: Control[] = [
  { kind: 'quantity', path: 'position' },
  { kind: 'quantity', path: 'adjuster.pitch' },
];
const PICTURES: Control[] = [{ kind: 'factor' }, { kind: 'sector' }, { kind: 'angles' }];
const ABOUT: Control[] = [
  { kind: 'words', path: 'title', title: 'Title', about: 'What the design is called, and its file when saved.' },
  { kind: 'words', path: 'notes', title: 'Notes', about: 'Anything worth remembering.', lines: 5 },
];
const SURFACE = ['halfAngle', 'diameter', 'station', 'from', 'to'] as const;

const surfaceRows = (path: string): Control[] => [
  ...SURFACE.map((key): Control => ({ kind: 'quantity', path: `${path}.${key}` })),
  { kind: 'profile', path: `${path}.profile` },
  { kind: 'lobes', path: `${path}.lobes` },
  { kind: 'quantity', path: `${path}.caseDepth` },
];

function seatRows(index: number, film: boolean): Control[] {
  const path = `seats[${index}]`;
  return [
    {
      kind: 'words',
      path: `${path}.name`,
      title: 'Name',
      about: 'What this seat is called; no two alike.',
    },
    { kind: 'quantity', path: `${path}.film.target` },
    ...(film ? [{ kind: 'quantity', path: `${path}.film.tolerance` } as const] : []),
  ];
}

interface Props {
  work: Work;
  fit: FitReport;
  drawnFactor: number;
}

export default function FitControls({ work, fit, drawnFactor }: Props) {
  const piece = useStore(work.store, (state) => state.piece);
  const count = useStore(work.store, (state) => state.design.seats.length);
  return (
    <WorkContext value={work}>
      <section className="controls" aria-label="Controls">
        <div className="groups">
          <ControlGroup title="Spindle" rows={SPINDLE} />
          <DrawnFactorContext value={drawnFactor}>
            <ControlGroup title="Pictures" rows={PICTURES} />
          </DrawnFactorContext>
        </div>
        <Seats key={piece} work={work} />
        <AddSeat work={work} count={count} />
        <WhereZero work={work} fit={fit} />
        <details>
          <summary>Title and notes</summary>
          <ControlGroup title="about this design" rows={ABOUT} />
        </details>
      </section>
    </WorkContext>
  );
}

function Seats({ work }: { work: Work }) {
  const seats = useStore(work.store, (state) => state.design.seats);
  // One that is added stands open.
  const [before] = useState(seats.length);
  return (
    <>
      {seats.map((seat, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a seat is known by its place, so that a new name does not fold it shut
        <details key={i} open={i >= before ? true : undefined}>
          <summary>
            {seat.name} seat: half angle {angleText(seat.bush.halfAngle)}, its sizes and its film
          </summary>
          <div className="groups">
            <ControlGroup title="journal" rows={surfaceRows(`seats[${i}].journal`)} />
            <ControlGroup title="bush" rows={surfaceRows(`seats[${i}].bush`)} />
            <ControlGroup title="seat" rows={seatRows(i, seat.film !== undefined)} />
          </div>
          <SeatTools work={work} seats={seats} index={i} />
        </details>
      ))}
    </>
  );
}
