/** Shake at the indicator against position, and a measured shake read back to a position and its films. */
import { ticks } from 'd3-array';
import { scaleLinear } from 'd3-scale';
import { useMemo, useState } from 'react';
import type { Design } from '../../../design/definition.ts';
import { fineText, fineUnit, type System } from '../../../design/units.ts';
import type { PlayReport } from '../../../report/play/definition.ts';
import { type ShakeRead, shakeRead } from '../../../report/play/shakeRead.ts';
import { AcrossAxis, AxisNames, across, curvePath, UpAxis, usePlot } from '../../charts/Axes.tsx';
import { holdsCurves } from '../../charts/curveTables.ts';
import { atLeast, atMost, LocalField } from '../../controls/LocalField.tsx';
import type { Work } from '../../state/store.ts';

/** A shake is read to this part of the fine unit. */
const FELT = 0.01;

interface Props {
  work: Work;
  design: Design;
  play: PlayReport;
  system: System;
}

/** px: on a wide page it stands beside the map of the nose, which is taller. */
const heightFor = (width: number) => (width >= 600 ? 340 : 260);
const MARGIN = { left: 52, right: 16, top: 24, bottom: 42 };

export function ShakeChart({ work, design, play, system }: Props) {
  const { box, width, height, plot } = usePlot(MARGIN, { width: 600, height: 340 }, heightFor);
  const unit = fineUnit(system);
  const [measured, setMeasured] = useState<number | null>(null);
  const [pending, setPending] = useState(false);
  const position = design.position ?? 0;
  const read = useMemo(() => (measured === null ? null : shakeRead(design, measured)), [design, measured]);
  const points = play.curve.filter((point): point is { position: number; total: number } => point.total !== null);
  const now = play.shake.total;
  const [first, last] = [points[0], points[points.length - 1]];
  if (!first || !last) return null;
  const x = scaleLinear(
    [Math.min(first.position, position), Math.max(last.position, position)],
    [plot.left, plot.right],
  );
  const y = scaleLinear(
    [0, 1.1 * Math.max(...points.map((point) => point.total), measured ?? 0, unit.size)],
    [plot.bottom, plot.top],
  );
  const tableOf = () => ({
    across: `position, ${unit.name}`,
    up: unit.name,
    lines: [{ name: 'shake', points: points.map((one) => [one.position / unit.size, one.total / unit.size] as const) }],
  });
  const [left, right] = x.domain() as [number, number];
  return (
    <figure className="chart" ref={box}>
      <svg
        width={width}
        height={height}
        role="img"
        aria-label="Shake at the indicator against axial position"
        ref={(drawing) => holdsCurves(drawing, tableOf)}
      >
        <UpAxis plot={plot} at={y} ticks={ticks(0, y.domain()[1]! / unit.size, 5)} unit={unit.size} />
        <AcrossAxis
          plot={plot}
          at={x}
          ticks={ticks(left / unit.size, right / unit.size, across(width))}
          unit={unit.size}
        />
        <AxisNames
          plot={plot}
          height={height}
          up={`shake at the indicator, ${unit.name}`}
          across={`position, ${unit.name}`}
        />
        <path
          d={curvePath(
            points.map(({ position, total }) => [position, total] as const),
            x,
            y,
          )}
          className="shake-curve"
        />
        <g className="now">
          <path d={`M${x(position)} ${plot.top}V${plot.bottom}`} />
          {now !== null && <circle cx={x(position)} cy={y(now)} r={5} className="shake-now" />}
        </g>
        {measured !== null && <path d={`M${plot.left} ${y(measured)}H${plot.right}`} className="measured" />}
        {read?.status === 'solved' &&
          read.answers.map((answer) => (
            <circle key={answer.position} cx={x(answer.position)} cy={y(measured!)} r={6} className="answer" />
          ))}
      </svg>
      <figcaption className="read-back">
        <LocalField
          title="Shake felt"
          about="Total indicator travel as the nose is pulled from side to side; the grey number is what the design gives here"
          quantity="fine"
          value={measured}
          set={(felt) => setMeasured(Math.round(felt / unit.size / FELT) * FELT * unit.size)}
          clear={() => setMeasured(null)}
          pending={setPending}
          {...(now !== null && { instead: fineText(now, system) })}
          system={system}
          bounds={[atLeast(0), atMost(10)]}
        />
        <div role="status">
          {measured === null && !pending && (
            <p>
              Type what the indicator showed on the bench: it is read back to where the journal stands, and to the films
              it has there. 0 is an answer too.
            </p>
          )}
          {measured !== null && read && !pending && (
            <Answer read={read} none={measured === 0} design={design} system={system} work={work} />
          )}
        </div>
      </figcaption>
    </figure>
  );
}

function Answer({
  read,
  none,
  design,
  system,
  work,
}: {
  read: ShakeRead;
  none: boolean;
  design: Design;
  system: System;
  work: Work;
}) {
  if (read.status === 'less')
    return (
      <p>
        Even against the stop it should shake more, {fineText(read.least, system)}: the parts are tighter than in the
        design, or the indicator did not see it all.
      </p>
    );
  if (read.status === 'more')
    return (
      <p>
        Nowhere should it shake so much; the most is {fineText(read.greatest, system)}: a seat is larger than in the
        design.
      </p>
    );
  if (read.status === 'undecided') return <p>No position can be told from the shake of this design.</p>;
  return (
    <>
      {read.answers.map(({ position, films }) => (
        <p key={position}>
          {none ? 'Without any shake it stands against the stop, at' : 'It stands at'} {fineText(position, system)}:{' '}
          {design.seats
            .map(({ name }, i) => `${name} ${films[i] === null ? 'apart' : fineText(films[i]!, system)}`)
            .join(', ')}
          .{' '}
          <button type="button" onClick={() => work.moveTo(position)}>
            Put the journal there
          </button>
        </p>
      ))}
    </>
  );
}
