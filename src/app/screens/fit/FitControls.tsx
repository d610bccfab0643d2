/** Every quantity of the pair, with the position and the pictures' own settings above them. */
import { useState } from 'react';
import { useStore } from 'zustand';
import { type AngleWay, angleSaid } from '../../../design/units.ts';
import ControlGroup from '../../controls/ControlGroup.tsx';
import { DrawnFactorContext, WorkContext } from '../../controls/context.ts';
import type { Control } from '../../controls/controls.tsx';
import { onDemand } from '../../frame/onDemand.tsx';
import { useAngles } from '../../state/angles.ts';
import type { Work } from '../../state/store.ts';
import { AddSeat, SeatTools } from './SeatTools.tsx';
import { useSeatIds } from './useSeatIds.ts';
import { WhereZero } from './WhereZero.tsx';

const JobDrawing = onDemand(() => import('./JobDrawing.tsx'), {
  what: 'The drawing',
  loading: 'The drawing is loading.',
});

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
  drawnFactor: number;
}

export default function FitControls({ work, drawnFactor }: Props) {
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
        <OnDrawing key={`drawing ${piece}`} work={work} />
        <Seats key={piece} work={work} />
        <AddSeat work={work} count={count} />
        <WhereZero work={work} />
        <details>
          <summary>Title and notes</summary>
          <ControlGroup title="about this design" rows={ABOUT} />
        </details>
      </section>
    </WorkContext>
  );
}

/** As a job is begun; drawn while it is looked at. */
function OnDrawing({ work }: { work: Work }) {
  const [open, setOpen] = useState(false);
  return (
    <details onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>The sizes on a drawing</summary>
      {open && <JobDrawing work={work} />}
    </details>
  );
}

const saidText = (halfAngle: number, way: AngleWay) =>
  halfAngle === 0 ? '' : `${way === 'half' ? 'half angle ' : ''}${angleSaid(halfAngle, way)}, `;

function Seats({ work }: { work: Work }) {
  const seats = useStore(work.store, (state) => state.design.seats);
  const way = useAngles();
  // A seat's panel goes with it, and a new name does not fold it shut; one that is added stands open.
  const ids = useSeatIds(seats);
  const [before] = useState(seats.length);
  return (
    <>
      {seats.map((seat, i) => (
        <details key={ids[i]} open={ids[i]! >= before ? true : undefined}>
          <summary>
            {seat.name} seat: {saidText(seat.bush.halfAngle, way)}its sizes and its film
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
