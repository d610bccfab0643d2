/** Least film of every seat against axial position: two slopes, where each touches, where each has its film. */

import { type CSSProperties, useMemo } from 'react';
import { useStore } from 'zustand';
import { fineUnit } from '../../design/units.ts';
import type { BeliefReport } from '../../report/belief/definition.ts';
import { metres, micrometres } from '../../report/convert.ts';
import { fitOf } from '../../report/fit/fitOf.ts';
import type { SeatLines, Wanted } from '../../report/inFrame.ts';
import { axialValues } from '../pictures/axialValues.ts';
import { classOf } from '../pictures/filmClass.ts';
import { CLASS_FILL } from '../pictures/filmColour.ts';
import { useAxialMove } from '../pictures/useMove.ts';
import type { Work } from '../state/store.ts';
import { useSame } from '../state/useSame.ts';
import { usePlot } from './Axes.tsx';
import { OffChart } from './ChartMarks.tsx';
import { ClosingGround, ClosingLegend, ClosingTags, closingDrawing, MARGIN } from './ClosingGround.tsx';
import { holdsCurves } from './curveTables.ts';
import { doubtOf } from './DoubtBand.tsx';
import { useHeldRange } from './useHeldRange.ts';

interface Props {
  seats: readonly SeatLines[];
  work: Work;
  /** how far the films may be other than drawn, where something was read */
  belief?: BeliefReport | null;
}

export default function ClosingChart({ seats, work, belief = null }: Props) {
  const { design, system } = useStore(work.store);
  const fit = fitOf(design);
  const {
    box,
    width,
    height,
    plot: shape,
  } = usePlot(MARGIN, { width: 800, height: 400 }, (w) => (w < 500 ? 360 : 400));
  const unit = fineUnit(system);
  const [low, high] = useHeldRange(design, fit, work);
  const wanted = design.seats;
  const drawing = useMemo(
    () => closingDrawing(seats, wanted, [low, high], width, height, system),
    [seats, wanted, low, high, width, height, system],
  );
  const { curves, x, y, top, bottom } = drawing;
  // What hangs on the seats alone stands still while the journal moves.
  const fits = useSame(fit.seats, wanted);
  const slopes = useSame(fit.seats, fit.seats.map(({ name, sensitivity }) => `${name} ${sensitivity}`).join());
  const plot = useSame(shape, `${width} ${height}`);
  const doubts = belief && seats.map(({ name }) => doubtOf(belief, fit, name));
  const move = useAxialMove(work, fit, () => (high - low) / (plot.right - plot.left));
  const tableOf = () => ({
    across: `position, ${unit.name}`,
    up: `least film, ${unit.name}`,
    lines: curves.map((curve, i) => ({
      name: seats[i]!.name,
      points: curve.map(([p, film]) => [p / unit.size, film / unit.size] as const),
    })),
  });
  const now = x(fit.position);
  return (
    <figure className="chart" ref={box}>
      <svg
        width={width}
        height={height}
        viewBox={`0 0 ${width} ${height}`}
        role="group"
        aria-label="Least film of every seat against axial position; drag sideways to move the journal"
        ref={(drawing) => holdsCurves(drawing, tableOf)}
        {...move.handlers}
      >
        <ClosingGround
          seats={seats}
          fits={fits}
          doubts={doubts}
          drawing={drawing}
          plot={plot}
          height={height}
          system={system}
        />
        <g
          role="slider"
          tabIndex={0}
          className="now"
          aria-label="Axial position of the journal, on the chart"
          aria-valuenow={micrometres(fit.position)}
          {...axialValues(fit, system)}
          onKeyDown={move.onKeyDown}
        >
          <rect x={now - 20} y={plot.top} width={40} height={plot.bottom - plot.top} className="grip" />
          <path d={`M${now} ${plot.top}V${plot.bottom}`} />
          {fit.seats.map(
            (seat, i) =>
              seat.leastFilm !== null &&
              seat.leastFilm <= top &&
              seat.leastFilm >= bottom && (
                <circle
                  key={seat.name}
                  cx={now}
                  cy={y(seat.leastFilm)}
                  r={5}
                  className={`dot seat-${i % 4}`}
                  style={dotStyle(seat.leastFilm, seats[i]!.wanted)}
                />
              ),
          )}
        </g>
        <ClosingTags seats={seats} labels={drawing.labels} />
        <OffChart fit={fit} shown={[bottom, top]} now={now} plot={plot} system={system} />
      </svg>
      <ClosingLegend fits={slopes} believed={belief !== null} system={system} />
    </figure>
  );
}

/** Of the same colour as the film in every picture. */
function dotStyle(film: number, wanted: Wanted | null): CSSProperties | undefined {
  const kind = classOf(metres(film), wanted);
  return kind === 'plain' ? undefined : { fill: CLASS_FILL[kind] };
}
