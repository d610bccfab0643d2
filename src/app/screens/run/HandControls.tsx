/** Speed, thrust, oil and load by hand, beside the picture that follows them. */
import type { Design } from '../../../design/definition.ts';
import { figures, measureText } from '../../../design/measures.ts';
import { withValue } from '../../../design/place.ts';
import { fineText, type System } from '../../../design/units.ts';
import { millipascalSeconds } from '../../../report/convert.ts';
import type { RunFields } from '../../../report/film/fields.ts';
import { ISO_GRADES } from '../../../report/film/oils.ts';
import { fitSection } from '../../../report/fit/section.ts';
import { roundAbove } from '../../pictures/sceneGeometry.ts';
import type { Work } from '../../state/store.ts';
import { useHeld } from '../../state/useHeld.ts';
import { HandSlider } from './HandSlider.tsx';
import { NoseView } from './NoseView.tsx';
import { isPosed } from './runEdits.ts';

interface Props {
  work: Work;
  design: Design;
  fields: RunFields | null;
  system: System;
}

/** rev/min and Pa·s: as far as the sliders reach; more can be typed. */
const SPEEDS = { from: 10, to: 30_000 };
const VISCOSITIES = { from: 0.001, to: 0.5 };

export function HandControls({ work, design, fields, system }: Props) {
  const { speed, oil, load } = design.run!;
  const put = (path: string, value: number) => work.change((d) => withValue(d, path, value));
  const way = speed < 0 ? -1 : 1;
  return (
    <div className="hand">
      <div className="sliders">
        <HandSlider
          work={work}
          title="Speed"
          min={Math.log10(SPEEDS.from)}
          max={Math.log10(SPEEDS.to)}
          step={0.01}
          value={Math.log10(Math.min(SPEEDS.to, Math.max(SPEEDS.from, Math.abs(speed))))}
          text={`${figures(speed)} rev/min`}
          set={(value) => put('run.speed', way * Number((10 ** value).toPrecision(3)))}
        />
        <OilSlider work={work} oil={oil} put={put} />
        {!isPosed(design.run!) && (
          <ThrustSlider
            work={work}
            thrust={load?.z ?? 0}
            sideways={Math.hypot(load?.x ?? 0, load?.y ?? 0)}
            put={put}
            system={system}
          />
        )}
        <PositionSlider work={work} design={design} system={system} />
      </div>
      <NoseView work={work} design={design} fields={fields} system={system} />
    </div>
  );
}

type Put = (path: string, value: number) => void;

function OilSlider({ work, oil, put }: { work: Work; oil: NonNullable<Design['run']>['oil']; put: Put }) {
  if (oil.viscosity !== undefined) {
    return (
      <HandSlider
        work={work}
        title="Viscosity"
        min={Math.log10(VISCOSITIES.from)}
        max={Math.log10(VISCOSITIES.to)}
        step={0.01}
        value={Math.log10(Math.min(VISCOSITIES.to, Math.max(VISCOSITIES.from, oil.viscosity)))}
        text={`${figures(millipascalSeconds(oil.viscosity))} mPa·s`}
        set={(value) => put('run.oil.viscosity', Number((10 ** value).toPrecision(3)))}
      />
    );
  }
  if (oil.grade === undefined) return null;
  const nearest = ISO_GRADES.reduce(
    (best, grade, i) =>
      Math.abs(Math.log(grade / oil.grade!)) < Math.abs(Math.log(ISO_GRADES[best]! / oil.grade!)) ? i : best,
    0,
  );
  return (
    <HandSlider
      work={work}
      title="Oil"
      min={0}
      max={ISO_GRADES.length - 1}
      step={1}
      value={nearest}
      text={`ISO VG ${figures(oil.grade)}`}
      set={(value) => put('run.oil.grade', ISO_GRADES[value]!)}
    />
  );
}

function ThrustSlider({
  work,
  thrust,
  sideways,
  put,
  system,
}: {
  work: Work;
  thrust: number;
  sideways: number;
  put: Put;
  system: System;
}) {
  // Held during a drag, so that the slider does not run away under the hand.
  const most = useHeld(roundAbove(Math.max(10, 2 * Math.abs(thrust), sideways)), work);
  return (
    <HandSlider
      work={work}
      title="Thrust"
      min={-most}
      max={most}
      step={most / 200}
      value={Math.min(most, Math.max(-most, thrust))}
      text={
        thrust === 0
          ? measureText('force', 0, system)
          : `${measureText('force', Math.abs(thrust), system)} ${thrust < 0 ? 'rearward' : 'noseward'}`
      }
      set={(value) => put('run.load.z', Number(value.toPrecision(3)))}
    />
  );
}

/** mm: how far beyond, and the finest step of the hand */
const BEYOND = 0.01;
const FINEST = 0.0001;

/**
 * From the first touch to the furthest place of a film wanted, and a little on; nothing where a pose holds the position
 * itself.
 */
function PositionSlider({ work, design, system }: Pick<Props, 'work' | 'design' | 'system'>) {
  const fit = fitSection(design);
  const position = fit.position;
  const touch = fit.firstPosition ?? position - BEYOND;
  const furthest = Math.max(touch, position, ...fit.seats.flatMap(({ positionForTarget }) => positionForTarget ?? []));
  const [from, to] = useHeld(
    [
      FINEST * Math.floor(Math.min(touch, position) / FINEST),
      FINEST * Math.ceil((furthest + BEYOND) / FINEST),
    ] as const,
    work,
  );
  if (design.run?.pose?.z !== undefined) return null;
  return (
    <HandSlider
      work={work}
      title="Position"
      min={from}
      max={to}
      step={FINEST}
      value={Math.min(to, Math.max(from, position))}
      text={fineText(position, system)}
      set={(value) => work.moveTo(Number(value.toFixed(7)))}
    />
  );
}
