/**
 * What the trials leave, as steps at the machine: of every surface what is most likely left and what may be taken now,
 * each with its feeds and passes (cutting/steps.ts), and by how much the gauges change over it. Only the change: where
 * a gauge stands now the trials do not tell, and must be read before the cut.
 */
import type { Design, Part } from '../../design/definition.ts';
import type { SeatInput } from '../../engine/contact/fit.ts';
import { gaugesFor } from '../../engine/cutting/gauges.ts';
import type { Reading as EngineReading } from '../../engine/gauging/reading.ts';
import { predict } from '../../engine/gauging/readings/index.ts';
import { withStock } from '../../engine/parts/stock.ts';
import { metres, millimetres, toSeats } from '../convert.ts';
import type { CutReport } from '../cut/definition.ts';
import { NOTHING } from '../cut/listed.ts';
import { type Taking, takingOf } from '../cut/taking.ts';
import { toTools } from '../cut/toCut.ts';
import type { Reading } from '../measure/kinds.ts';
import { fromReading, toReading, toReadings } from '../measure/toReading.ts';
import type { PartsAfterTrials } from './partsAfterTrials.ts';

type Left = NonNullable<CutReport['remaining']>['steps'][number];

export interface LeftStep {
  seat: string;
  part: Part;
  /** degrees: that at which it is cut */
  halfAngle: number;
  /** mm: standard uncertainty of what is left */
  sigma: number;
  /** mm: between which that lies 19 times in 20 */
  limits?: readonly [number, number] | undefined;
  /** null where nothing is safe to take yet */
  safe: Taking | null;
  all: Taking;
  /** the change of every gauge (mm) over each; null where it cannot be read */
  gauges: { reading: Reading; safe: number | null; all: number | null }[];
}

/** In the order of work: the bush first, the steepest of a part last. */
export function leftSteps(
  design: Design,
  { steps: planned, remaining }: Pick<CutReport, 'steps' | 'remaining'>,
  { now, reckoned }: PartsAfterTrials,
): LeftStep[] {
  const rank = ({ part, halfAngle }: LeftStep) => (part === 'bush' ? 0 : 90) + Math.abs(halfAngle);
  const gaugesOf = (left: Left) =>
    planned.find(({ seat, part }) => seat === left.seat && part === left.part)?.gauges ?? [];
  return (remaining?.steps ?? [])
    .filter(({ normal }) => normal >= NOTHING)
    .map((left) => leftStep(design, left, { now, reckoned }, gaugesOf(left)))
    .sort((a, b) => rank(a) - rank(b));
}

/** @param known the gauges of the plan, which the person has at hand */
function leftStep(
  design: Design,
  { seat, part, normal, sigma, limits, safe }: Left,
  { now, reckoned }: Pick<PartsAfterTrials, 'now' | 'reckoned'>,
  known: readonly { reading: Reading }[],
): LeftStep {
  const i = design.seats.findIndex(({ name }) => name === seat);
  const { halfAngle } = reckoned.seats[i]![part];
  const taking = (amount: number) => takingOf(design, amount, halfAngle, part);
  const before = toSeats(now);
  // Where a line is cut anew a gauge tells nothing before the new one shows all along.
  const isSame =
    now.seats[i]![part].halfAngle === halfAngle &&
    (now.seats[i]![part].profile ?? []).length === (reckoned.seats[i]![part].profile ?? []).length;
  const found = () =>
    known.length > 0
      ? known.map(({ reading }) => toReading(design, reading))
      : gaugesFor(before, i, part, toReadings(design), {
          tools: toTools(design, design.cut ?? { allow: [] }),
          after: toSeats(reckoned),
        });
  const gauges = isSame ? found() : [];
  const isSafe = safe >= NOTHING;
  return {
    seat,
    part,
    halfAngle,
    sigma,
    limits,
    safe: isSafe ? taking(safe) : null,
    all: taking(normal),
    gauges: gauges.map((gauge) => ({
      reading: fromReading(design, { ...gauge, value: 0, sigma: metres(0.001) }),
      safe: isSafe ? changeOf(gauge, before, i, part, safe) : null,
      all: changeOf(gauge, before, i, part, normal),
    })),
  };
}

/** mm */
function changeOf(
  gauge: EngineReading,
  before: readonly SeatInput[],
  seat: number,
  part: Part,
  normal: number,
): number | null {
  const after = before.map((s, i) => (i === seat ? { ...s, [part]: withStock(s[part], part, metres(normal)) } : s));
  const [was, is] = [predict(gauge, before), predict(gauge, after)];
  return was.value === null || is.value === null || was.fault || is.fault ? null : millimetres(is.value - was.value);
}
