/** The window of cold clearances that work: too tight seizes, too loose rattles; and where to set the journal cold. */
import type { Design } from '../../../design/definition.ts';
import { withValue } from '../../../design/place.ts';
import { fineText, fineUnit, type System } from '../../../design/units.ts';
import type { ColdSetting, CutPoint } from '../../../report/film/limits.ts';
import { ConditionLegend, stretchesOf } from '../../charts/conditions.tsx';
import { LineChart } from '../../charts/LineChart.tsx';
import type { Work } from '../../state/store.ts';
import { coldAndWarm, neededLevel } from './leastFilms.ts';
import type { Sweep } from './useRunWork.ts';

interface Props {
  sweep: Sweep<CutPoint>;
  design: Design;
  system: System;
}

export function ClearanceWindow({ sweep, design, system }: Props) {
  const unit = fineUnit(system);
  const { points } = sweep;
  if (points.length < 2) return null;
  const shown = points.map((point): CutPoint => ({ ...point, at: point.at / unit.size }));
  const domain = [shown[0]!.at, shown[shown.length - 1]!.at] as const;
  return (
    <section aria-label="Clearances that work">
      <h2>{windowText(sweep, system)}</h2>
      <p className="fine">
        Film taken from every seat or added to it, cold; each point the steady state it warms to. It must part the
        surfaces from the start.
      </p>
      <ConditionLegend points={points} cold />
      <LineChart
        title="Least film, cold and warm, against cold clearance, with the clearances that work"
        across={`cold film of every seat against the design’s, ${unit.name}`}
        up={`least film, ${unit.name}`}
        domain={domain}
        now={0}
        height={280}
        stretches={stretchesOf(
          shown,
          false,
          sweep.safe ? [sweep.safe.from / unit.size, sweep.safe.to / unit.size] : [],
        )}
        lines={coldAndWarm(shown, unit.size)}
        level={neededLevel(design, system)}
      />
    </section>
  );
}

function windowText({ safe }: Sweep, system: System): string {
  if (safe === undefined) return 'Which cold clearances work';
  if (safe === null) return 'None of the clearances looked at works, cold and warm.';
  const stands = safe.from <= 0 && safe.to >= 0 ? '' : 'As it stands it does not run safely, cold and warm. ';
  const tighter = safe.from <= 0 ? `${fineText(-safe.from, system)} tighter` : `${fineText(safe.from, system)} looser`;
  const looser = safe.to >= 0 ? `${fineText(safe.to, system)} looser` : `${fineText(-safe.to, system)} tighter`;
  if (safe.openBelow && safe.openAbove) return `Every clearance looked at works, from ${tighter} to ${looser}.`;
  if (safe.openAbove)
    return `${stands}Every seat ${stands === '' ? 'may be no more than' : 'must be at least'} ${tighter} than the design, cold; looser works as far as was looked.`;
  if (safe.openBelow)
    return `${stands}Every seat ${stands === '' ? 'may be up to' : 'must be at least'} ${looser} than the design, cold; tighter works as far as was looked.`;
  return `${stands}Every seat ${stands === '' ? 'may' : 'must'} be from ${tighter} to ${looser} than the design, cold.`;
}

interface SettingsProps {
  work: Work;
  design: Design;
  settings: readonly ColdSetting[];
  system: System;
}

/** Where to set the journal cold, so that a film is the one wanted when all is warm. */
export function ColdSettings({ work, design, settings, system }: SettingsProps) {
  if (settings.length === 0) return null;
  const pitch = design.adjuster?.pitch;
  const straight = (seat: string) => design.seats.find(({ name }) => name === seat)?.bush.halfAngle === 0;
  const set = (position: number) => {
    const tidy = Number(position.toPrecision(9));
    if (design.run?.pose?.z !== undefined) work.change((d) => withValue(d, 'run.pose.z', tidy));
    else work.moveTo(tidy);
  };
  return (
    <section aria-label="Position to set cold">
      <p className="fine">For the film wanted, measured as on the Fit screen with the journal centred, once warm.</p>
      <ul className="plain">
        {settings.map(({ seat, status, position, move, nearest, inTheWay, leastFilm }) => {
          const target = design.seats.find(({ name }) => name === seat)?.film?.target;
          const wanted = `${seat} film ${target === undefined ? '' : fineText(target, system)}`;
          if (status === 'notSet')
            return (
              <li key={seat}>
                The {wanted} warm: the position does not set it, because{' '}
                {straight(seat) ? 'the seat is straight' : 'the oil finds its own position'}.
              </li>
            );
          if (status === 'pressed')
            return (
              <li key={seat}>
                The {wanted} warm: the load presses the journal off its adjuster, to {fineText(nearest ?? 0, system)}{' '}
                there; no setting holds it further off.
              </li>
            );
          if (status === 'notFound' || position === null)
            return (
              <li key={seat}>
                The {wanted} warm: no position gives it
                {inTheWay === null
                  ? ''
                  : inTheWay.shut
                    ? `; the ${inTheWay.seat} seat shuts before`
                    : `; on the way there metal touches in the ${inTheWay.seat} seat, as it warms or under the load`}
                .
              </li>
            );
          const turns = pitch ? `, ${((Math.abs(move!) / pitch) * 360).toFixed(1)}° of the adjuster` : '';
          return (
            <li key={seat}>
              For the {wanted} warm: set it cold at {fineText(position, system)}
              {Math.abs(move!) < 5e-5
                ? ', where it stands'
                : ` (${fineText(Math.abs(move!), system)} ${move! < 0 ? 'rearward' : 'noseward'} of now${turns})`}
              . {leastFilm !== null && `Running, the thinnest film of all is then ${fineText(leastFilm, system)}.`}{' '}
              {Math.abs(move!) >= 5e-5 && (
                <button type="button" onClick={() => set(position)}>
                  Set this position
                </button>
              )}
            </li>
          );
        })}
      </ul>
    </section>
  );
}
