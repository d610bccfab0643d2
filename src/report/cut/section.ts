/** The `cut` section of the report: the plan and its steps at the machine. */
import type { Design, Part } from '../../design/definition.ts';
import { seatLines } from '../../engine/contact/fit.ts';
import type { Limit } from '../../engine/cutting/conflicts.ts';
import { nearestPlan, type Plan, type Verdict as PlanVerdict, planCut, planIn } from '../../engine/cutting/plan.ts';
import { NO_STEP, type PlanInput } from '../../engine/cutting/problem.ts';
import { MISSED, WORTH } from '../../engine/cutting/programme.ts';
import {
  type FaceStep,
  type GaugeStop,
  journalMove,
  type Stop,
  type SurfaceStep,
  stepsOf,
  type Why,
} from '../../engine/cutting/steps.ts';
import { isGuess } from '../assumed.ts';
import { notAsReadSection } from '../belief/believed.ts';
import { degrees, metres, millimetres, radians } from '../convert.ts';
import { fromReading, toReadings } from '../measure/toReading.ts';
import { aimsSection, tradeSection } from './aimsSection.ts';
import { asTheyAre } from './asTheyAre.ts';
import { caseSection } from './caseLeft.ts';
import type { CutReport, CutStepReport, FaceStepReport, LimitReport } from './definition.ts';
import { doubtOf, doubtSection } from './doubt.ts';
import { inTolerance } from './inTolerance.ts';
import { lapSection } from './lapSection.ts';
import { NOTHING } from './listed.ts';
import { setUpSection } from './setUpSection.ts';
import { takingOf } from './taking.ts';
import { orNull, toMachine, toPlanInput, toTools } from './toCut.ts';
import { doubtOfSteps, leftAtFirst, trialSection } from './trialSection.ts';
import { reasonText } from './words.ts';
import { workSection } from './workSection.ts';
import { worksSection } from './works.ts';
import { worthSection } from './worthSection.ts';

export function cutSection(design: Design): CutReport | undefined {
  const { cut } = design;
  if (!cut) return undefined;
  const input = toPlanInput(design, cut);
  const verdict = planCut(input);
  const plan = planIn(verdict);
  const doubt = doubtOf(design);
  const atFirst = plan ? leftAtFirst(design, cut, input) : null;
  const sigmaOf = doubtOfSteps(atFirst);
  const safe = (seat: number, part: Part) => metres(sigmaOf(seat, part)?.safe ?? Number.POSITIVE_INFINITY);
  const steps = plan
    ? stepsOf(input, plan, toMachine(cut), { readings: toReadings(design), tools: toTools(design, cut), safe })
    : [];
  const position = plan ? plan.position : input.position;
  const move = journalMove(input, position);
  const pitch = design.adjuster?.pitch;
  const reached = reachedBy(plan);
  const surfaces = steps
    .filter((step) => step.kind === 'surface')
    .map((step) => stepSection(design, step, reached([step.seat]), sigmaOf(step.seat, step.part)));
  const { told: trials, now } = trialSection(design, cut, input);
  const hard = caseSection(design, { steps: surfaces, remaining: trials.remaining });
  return {
    steps: surfaces,
    position: millimetres(position),
    films: filmsSection(design, plan, input),
    feasible: verdict.status === 'planned',
    status: verdict.status,
    apart: verdict.status === 'apart' ? verdict.seats.map((i) => design.seats[i]!.name) : [],
    faces: steps
      .filter((step) => step.kind === 'face')
      .map((step) => faceSection(design, input, step, reached(input.faces![step.face]!.seats))),
    total: plan ? millimetres(plan.total) : 0,
    inTolerance: plan !== null && inTolerance(input, plan),
    ...limitsSection(design, input, verdict),
    missed: plan ? missedSection(design, input, plan, verdict) : [],
    aims: aimsSection(design, input),
    trade: tradeSection(input),
    doubt: doubtSection(design, input, doubt),
    ...(isGuess(design) && { guess: true as const }),
    ...notAsReadSection(design),
    shift: millimetres(move.shift),
    turns: pitch === undefined ? null : millimetres(move.shift) / pitch,
    inReach: move.within,
    ...(steps.length > 0 && asTheyAre(design, input)),
    ...(verdict.status === 'infeasible' && { uncut: uncutSection(design, input) }),
    ...setUpSection(design, cut, plan, steps),
    work: workSection(design, cut, input, steps, { steps: surfaces, remaining: trials.remaining }),
    ...trials,
    ...worksSection(design, cut, input, now ?? atFirst),
    ...worthSection(design, cut, now ?? atFirst),
    ...(hard && { case: hard }),
    ...(cut.lap && { lap: lapSection(design, cut.lap, input) }),
  };
}

/** A film (m) this near to nothing is nothing. */
const ROUNDING = 4e-13;

function filmsSection(design: Design, plan: Plan | null, input: PlanInput): CutReport['films'] {
  const films = plan?.films ?? input.seats.map(() => null);
  return Object.fromEntries(
    films.map((film, i) => [design.seats[i]!.name, film !== null && Math.abs(film) <= ROUNDING ? 0 : orNull(film)]),
  );
}

/** What there is without taking any metal off. */
function uncutSection(design: Design, input: PlanInput): NonNullable<CutReport['uncut']> {
  const plan = nearestPlan({ ...input, allow: [], faces: [] });
  return { position: millimetres(plan?.position ?? input.position), films: filmsSection(design, plan, input) };
}

/**
 * A seat that an axial move closes by less than this much of itself costs more to move to its film than that is worth.
 */
const NEARLY_STRAIGHT = 2 / WORTH;
const isNearlyStraight = ({ bush }: Plan['seats'][number]) => Math.abs(Math.sin(bush.halfAngle)) < NEARLY_STRAIGHT;

/** Films that are not what is wanted, and why. */
function missedSection(
  design: Design,
  { seats }: PlanInput,
  { films, misses, seats: cut }: Plan,
  verdict: PlanVerdict,
): CutReport['missed'] {
  const limited =
    verdict.status === 'infeasible' &&
    [...verdict.conflicts, ...verdict.together].some(({ needed }) => needed !== null);
  return seats.flatMap(({ target = 0 }, i): CutReport['missed'] => {
    if (misses[i]! < MISSED || films[i] === null) return [];
    const by = films[i]! - target;
    const straight = isNearlyStraight(cut[i]!);
    const why =
      by > 0 && seatLines(cut[i]!).closes === 'never'
        ? 'metalMissing'
        : limited
          ? 'limits'
          : by > 0 && !straight
            ? 'metalMissing'
            : 'worth';
    return [{ seat: design.seats[i]!.name, by: millimetres(by), why }];
  });
}

const stopSection = ({ before, half, safe, stop }: Stop) => ({
  before: orNull(before),
  half: orNull(half),
  ...(safe !== undefined && { safe: orNull(safe) }),
  stop: orNull(stop),
});

function stepSection(
  design: Design,
  step: SurfaceStep,
  reached: boolean,
  doubt: ReturnType<ReturnType<typeof doubtOfSteps>>,
): CutStepReport {
  const after = step.after[step.seat]![step.part];
  const drawn = design.seats[step.seat]![step.part].halfAngle;
  const isPart = doubt !== null && doubt.safe >= NOTHING && doubt.safe < millimetres(step.normal) - NOTHING;
  return {
    seat: design.seats[step.seat]!.name,
    part: step.part,
    normal: millimetres(step.normal),
    ...doubt,
    ...(isPart && { first: takingOf(design, doubt.safe, degrees(after.halfAngle), step.part) }),
    deepest: millimetres(step.deepest),
    diameter: millimetres(step.diameter),
    crossFeed: millimetres(step.crossFeed),
    axialFeed: orNull(step.axialFeed),
    crossDivisions: step.crossDivisions,
    axialDivisions: step.axialDivisions,
    tableFeed: millimetres(step.tableFeed),
    slideFeed: orNull(step.slideFeed),
    passes: { count: step.passes.count, depth: millimetres(step.passes.depth), last: millimetres(step.passes.last) },
    touch: stopSection(step.touch),
    standOff: stopSection(step.standOff),
    gauges: step.gauges.map((g) => ({
      reading: fromReading(design, {
        ...g.gauge,
        value: g.stop ?? g.half ?? g.before ?? 2 * after.radius,
        sigma: metres(0.001),
      }),
      ...stopSection(g),
    })),
    why: whyOf(step.why, reached),
    turn: step.turn,
    reason: [reasonText(whyOf(step.why, reached), step.turn), ...step.gauges.flatMap(edgeText)].join(' '),
    after: {
      halfAngle: after.halfAngle === radians(drawn) ? drawn : degrees(after.halfAngle),
      diameter: 2 * millimetres(after.radius),
    },
  };
}

/** A gauge that touches where the line may have fallen away. */
const edgeText = ({ gauge, nearEnd }: GaugeStop) =>
  nearEnd === null
    ? []
    : [
        `The ${gauge.kind === 'overRolls' ? 'rolls touch' : 'ball touches'} near the end of the line: see that no broken edge is there.`,
      ];

/**
 * Whether a step of these seats brings what it is for: its own film and, of a cone, those of all cones, which stand in
 * one relation.
 */
function reachedBy(plan: Plan | null): (seats: readonly number[]) => boolean {
  if (!plan) return () => false;
  const cones = plan.seats.flatMap((seat, i) => (isNearlyStraight(seat) ? [] : [i]));
  return (seats) =>
    [...seats, ...(seats.some((i) => cones.includes(i)) ? cones : [])].every((i) => plan.misses[i]! < NO_STEP);
}

/** Where the films wanted are not reached no step reaches them. */
const whyOf = (why: Why, reached: boolean) => (reached || why === 'cleanup' || why === 'newLine' ? why : 'nearer');

function faceSection(design: Design, input: PlanInput, step: FaceStep, reached: boolean): FaceStepReport {
  const { name, part, seats } = input.faces![step.face]!;
  return {
    name,
    part,
    seats: seats.map((i) => design.seats[i]!.name),
    off: millimetres(step.off),
    standOff: stopSection(step.standOff),
    reason: reasonText(whyOf(step.why, reached), step.turn),
  };
}

/** A limit that would have to give way by less than a step (m) is none that anybody could let go. */
const isWorthTelling = ({ limit, needed }: Limit) => needed === null || Math.abs(needed - limit) >= NO_STEP;

function limitsSection(design: Design, input: PlanInput, verdict: PlanVerdict): Pick<CutReport, 'limits' | 'together'> {
  if (verdict.status !== 'infeasible') return { limits: [], together: [] };
  const { nearest, conflicts, together } = verdict;
  const told = ({ what, room, limit, needed }: Limit): LimitReport => {
    const of = room === null ? null : nearest.rooms[room]!.of;
    const named =
      of === null
        ? {}
        : of.kind === 'face'
          ? { face: input.faces![of.face]!.name }
          : { seat: design.seats[of.seat]!.name, part: of.part };
    return { what, ...named, limit: millimetres(limit), needed: orNull(needed) };
  };
  return { limits: conflicts.filter(isWorthTelling).map(told), together: together.filter(isWorthTelling).map(told) };
}
