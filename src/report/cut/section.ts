/** The `cut` section of the report: the plan and its steps at the machine. */
import type { Design } from '../../design/definition.ts';
import { missesOf, type Plan, type Verdict as PlanVerdict, planCut, planIn } from '../../engine/cutting/plan.ts';
import type { PlanInput } from '../../engine/cutting/problem.ts';
import { type FaceStep, type GaugeStop, journalMove, type Stop, type SurfaceStep, stepsOf, type Why } from '../../engine/cutting/steps.ts';
import { fromReading, toReadings } from '../measure/toReading.ts';
import { degrees, metres, millimetres, radians } from '../toEngine.ts';
import type { CutReport, CutStepReport, FaceStepReport, LimitReport } from './definition.ts';
import { lapSection } from './lapSection.ts';
import { setUpSection } from './setUpSection.ts';
import { orNull, toMachine, toPlanInput, toTools } from './toCut.ts';
import { doubtOfSteps, trialSection } from './trialSection.ts';
import { reasonText } from './words.ts';
import { workSection } from './workSection.ts';

export function cutSection(design: Design): CutReport | undefined {
  const { cut } = design;
  if (!cut) return undefined;
  const input = toPlanInput(design, cut);
  const verdict = planCut(input);
  const plan = planIn(verdict);
  const steps = plan ? stepsOf(input, plan, toMachine(cut), toReadings(design), toTools(cut)) : [];
  const doubtOf = plan && steps.length > 0 ? doubtOfSteps(cut, input) : () => null;
  const position = plan ? plan.position : input.position;
  const move = journalMove(input, position);
  const pitch = design.adjuster?.pitch;
  return {
    steps: steps.filter((step) => step.kind === 'surface').map((step) => stepSection(design, step, verdict.status === 'planned', doubtOf(step.seat, step.part))),
    position: millimetres(position),
    films: filmsSection(design, plan, input),
    feasible: verdict.status === 'planned',
    status: verdict.status,
    apart: verdict.status === 'apart' ? verdict.seats.map((i) => design.seats[i]!.name) : [],
    faces: steps.filter((step) => step.kind === 'face').map((step) => faceSection(design, input, step, verdict.status === 'planned')),
    total: plan ? millimetres(plan.total) : 0,
    inTolerance: plan !== null && move.within && inTolerance(input, plan),
    limits: verdict.status === 'infeasible' ? limitsSection(design, input, verdict) : [],
    shift: millimetres(move.shift),
    turns: pitch === undefined ? null : millimetres(move.shift) / pitch,
    inReach: move.within,
    ...(verdict.status === 'infeasible' && { uncut: uncutSection(design, input, verdict.nearest) }),
    ...setUpSection(design, cut, plan, steps),
    work: workSection(design, cut, input, steps),
    ...trialSection(design, cut, input),
    ...(cut.lap && { lap: lapSection(design, cut.lap, input) }),
  };
}

/** A film (m) this near to nothing is nothing, and this near to the end of its tolerance is within it. */
const ROUNDING = 4e-13;

function filmsSection(design: Design, plan: Plan | null, input: PlanInput): CutReport['films'] {
  const films = plan?.films ?? input.seats.map(() => null);
  return Object.fromEntries(films.map((film, i) => [design.seats[i]!.name, film !== null && Math.abs(film) <= ROUNDING ? 0 : orNull(film)]));
}

/** Of a share of the greatest miss less than this nobody speaks. */
const WORTH = 0.02;

/** What there is without taking any metal off, and whether the nearest result is any nearer. */
function uncutSection(design: Design, input: PlanInput, nearest: Plan): NonNullable<CutReport['uncut']> {
  const plan = planIn(planCut({ ...input, allow: [], faces: [] }));
  const [then, now] = [nearest, plan].map((p) => missesOf(input.seats, p?.films ?? input.seats.map(() => null))) as [ReturnType<typeof missesOf>, ReturnType<typeof missesOf>];
  const least = 1 - WORTH;
  const helps = then.greatest < least * now.greatest || (then.greatest <= now.greatest / least && then.sum < least * now.sum);
  return { position: millimetres(plan?.position ?? input.position), films: filmsSection(design, plan, input), cutHelps: helps };
}

const inTolerance = ({ seats }: PlanInput, { films }: Plan): boolean => seats.every(({ target, tolerance = 0 }, i) => target === undefined || (films[i] !== null && Math.abs(films[i]! - target) <= tolerance + ROUNDING));

const stopSection = ({ before, half, stop }: Stop) => ({ before: orNull(before), half: orNull(half), stop: orNull(stop) });

function stepSection(design: Design, step: SurfaceStep, reached: boolean, sigma: number | null): CutStepReport {
  const after = step.after[step.seat]![step.part];
  const drawn = design.seats[step.seat]![step.part].halfAngle;
  return {
    seat: design.seats[step.seat]!.name,
    part: step.part,
    normal: millimetres(step.normal),
    ...(sigma !== null && { sigma }),
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
    gauges: step.gauges.map((g) => ({ reading: fromReading(design, { ...g.gauge, value: g.stop ?? g.half ?? g.before ?? 2 * after.radius, sigma: metres(0.001) }), ...stopSection(g) })),
    why: whyOf(step.why, reached),
    turn: step.turn,
    reason: [reasonText(whyOf(step.why, reached), step.turn), ...step.gauges.flatMap(edgeText)].join(' '),
    after: { halfAngle: after.halfAngle === radians(drawn) ? drawn : degrees(after.halfAngle), diameter: 2 * millimetres(after.radius) },
  };
}

/** A gauge that touches where the line may have fallen away. */
const edgeText = ({ gauge, nearEnd }: GaugeStop) => (nearEnd === null ? [] : [`The ${gauge.kind === 'overRolls' ? 'rolls touch' : 'ball touches'} near the end of the line: see that no broken edge is there.`]);

/** Where the films wanted are not reached no step reaches them. */
const whyOf = (why: Why, reached: boolean) => (reached || why === 'cleanup' || why === 'newLine' ? why : 'nearer');

function faceSection(design: Design, input: PlanInput, step: FaceStep, reached: boolean): FaceStepReport {
  const { name, part, seats } = input.faces![step.face]!;
  return { name, part, seats: seats.map((i) => design.seats[i]!.name), off: millimetres(step.off), standOff: stopSection(step.standOff), reason: reasonText(whyOf(step.why, reached), step.turn) };
}

function limitsSection(design: Design, input: PlanInput, { nearest, conflicts }: Extract<PlanVerdict, { status: 'infeasible' }>): LimitReport[] {
  return conflicts.map(({ what, room, limit, needed }) => {
    const of = room === null ? null : nearest.rooms[room]!.of;
    const named = of === null ? {} : of.kind === 'face' ? { face: input.faces![of.face]!.name } : { seat: design.seats[of.seat]!.name, part: of.part };
    return { what, ...named, limit: millimetres(limit), needed: orNull(needed) };
  });
}
