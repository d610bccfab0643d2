/** What film should I aim for? The films that work, what each costs in heat and power, and one to take over. */
import { useState } from 'react';
import type { Design } from '../../../design/definition.ts';
import { inUnit, unitOf } from '../../../design/measures.ts';
import { fineText, fineUnit, type System } from '../../../design/units.ts';
import { aimVerdict } from '../../../report/film/aimVerdict.ts';
import type { AimReport, CutPoint } from '../../../report/film/limits.ts';
import { AMBIENT } from '../../../report/film/toSpindle.ts';
import { followedSentence } from '../../../report/followed.ts';
import { ConditionLegend, stretchesOf } from '../../charts/conditions.tsx';
import { LineChart } from '../../charts/LineChart.tsx';
import type { Work } from '../../state/store.ts';
import { coldAndWarm, motorLevel, neededLevel, powerColdAndWarm } from './leastFilms.ts';
import type { Sweep } from './useRunWork.ts';

interface Props {
  work: Work;
  design: Design;
  sweep: Sweep<CutPoint>;
  aim: AimReport | undefined;
  system: System;
}

export function AimFor({ work, design, sweep, aim, system }: Props) {
  const { points } = sweep;
  if (points.length < 2) return null;
  const verdict = aim && aimVerdict(design, points, aim, system);
  return (
    <section aria-label="Film to aim for">
      <h2>{verdict?.headline ?? 'What film to aim for'}</h2>
      {verdict?.sentences.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {verdict?.wanted && aim && <Take work={work} wanted={verdict.wanted} seats={aim.seats} system={system} />}
      <p className="fine">
        As though every seat aimed at were cut to just that film, cold and centred; each point the steady state it warms
        to.
      </p>
      <Charts design={design} sweep={sweep} target={verdict?.wanted?.target ?? null} system={system} />
    </section>
  );
}

function Take({
  work,
  wanted: { target, tolerance },
  seats,
  system,
}: {
  work: Work;
  wanted: { target: number; tolerance: number };
  seats: readonly string[];
  system: System;
}) {
  // What moved when it was taken stays said.
  const [moved, setMoved] = useState<string | null>(null);
  const told = `${fineText(target, system)} ± ${fineText(tolerance, system)}`;
  const isTaken = (design: Design) =>
    design.seats.every(
      ({ name, film }) => !seats.includes(name) || (film?.target === target && film.tolerance === tolerance),
    );
  const taking = (design: Design): Design => ({
    ...design,
    seats: design.seats.map((seat) => (seats.includes(seat.name) ? { ...seat, film: { target, tolerance } } : seat)),
  });
  const { design } = work.store.getState();
  const taken = isTaken(design);
  const follows = taken ? moved : followedSentence(design, taking(design), system);
  const take = () => {
    setMoved(follows);
    work.change(taking);
  };
  return (
    <>
      <p className="buttons">
        <button type="button" onClick={take} disabled={taken}>
          Take {told} as the film wanted
        </button>
      </p>
      <p role="status">{follows}</p>
    </>
  );
}

function Charts({
  design,
  sweep: { points, safe },
  target,
  system,
}: {
  design: Design;
  sweep: Sweep<CutPoint>;
  /** mm: what is proposed */
  target: number | null;
  system: System;
}) {
  const unit = fineUnit(system);
  const shown = points.map((point): CutPoint => ({ ...point, at: point.at / unit.size }));
  const targets = design.seats.flatMap(({ film }) => film?.target ?? []);
  const common = {
    across: `film cut to, cold, ${unit.name}`,
    domain: [shown[0]!.at, shown[shown.length - 1]!.at] as const,
    log: true,
    now: targets.length === 0 ? null : Math.min(...targets) / unit.size,
    nowText: targets.length === 0 ? '' : `wanted now: ${fineText(Math.min(...targets), system)}`,
    mark: target === null ? null : { at: target / unit.size, text: `aim: ${fineText(target, system)}` },
    stretches: stretchesOf(shown, true, safe ? [safe.from / unit.size, safe.to / unit.size] : []),
  };
  const line = (name: string, style: number, of: (point: CutPoint) => number | null) => ({
    name,
    style,
    points: shown.map((point) => [point.at, of(point) ?? Number.NaN] as const),
  });
  return (
    <>
      <ConditionLegend points={points} cold />
      <div className="run-charts">
        <LineChart
          {...common}
          title="Least film, cold and warm, against the film cut to"
          up={`least film, ${unit.name}`}
          lines={coldAndWarm(shown, unit.size)}
          level={neededLevel(design, system)}
        />
        <LineChart
          {...common}
          title="Temperature of the journal against the film cut to"
          up={`journal, ${unitOf('temperature', system).name}`}
          lowest={Math.floor(inUnit('temperature', design.run!.ambient ?? AMBIENT, system))}
          lines={[line('journal', 0, ({ journal }) => journal && inUnit('temperature', journal, system))]}
        />
        <LineChart
          {...common}
          title="Friction power, cold and warm, against the film cut to"
          up="friction, W"
          lines={powerColdAndWarm(shown)}
          level={motorLevel(shown)}
        />
      </div>
    </>
  );
}
