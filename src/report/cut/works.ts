/**
 * How often the pair works, every film within its tolerance, as it stands, with what is safe off, and with all off: of
 * the pairs drawn, as on Odds. By it what stands well is left: metal is asked for only where that makes it likelier,
 * for none can be put back.
 */
import type { Design } from '../../design/definition.ts';
import type { PlanInput } from '../../engine/cutting/problem.ts';
import { believed } from '../../engine/cutting/trialReadings.ts';
import { chanceOfPairs } from '../../engine/odds/works.ts';
import { FEWEST_DRAWN } from '../belief/spread.ts';
import { questionOf } from '../odds/question.ts';
import { cutBefore, cutOffBy } from './cutOff.ts';
import type { CutReport } from './definition.ts';
import { type Cut, toTrials } from './toCut.ts';
import type { LeftNow } from './trialSection.ts';

/** Of the plan: what else might come off than all of it. */
const SHARES = [0.25, 0.5, 0.75];
/** A gain of less than this is none, of so few pairs. */
const GAIN = 0.02;
/** What fails oftener than it works is not left so. */
const LIKELIER = 0.5;

export function worksSection(
  design: Design,
  cut: Cut,
  input: PlanInput,
  now: LeftNow | null,
): Pick<CutReport, 'works'> {
  if (!now?.left.plan || now.known.clashes || now.known.drawn.effective < FEWEST_DRAWN) return {};
  const wanted = input.seats.filter(({ target }) => target !== undefined);
  if (wanted.length === 0 || wanted.some(({ tolerance = 0 }) => tolerance === 0)) return {};
  const { plan, amounts } = now.left;
  const { parts, films, drawn } = now.known;
  const middle = believed(parts, films);
  const question = questionOf(design, design.position ?? 0);
  const to = { cut, input: { ...input, seats: [...parts] }, before: cutBefore(toTrials(design, cut)) };
  const chanceOf = (amounts: number[]) =>
    chanceOfPairs(drawn, { middle, question, off: cutOffBy(to, { ...plan, amounts }) });
  const safe = plan.amounts.map((_, room) => amounts.find((left) => left.room === room)?.safe ?? 0);
  const chances = {
    now: chanceOfPairs(drawn, { middle, question, off: null }),
    safe: 0,
    all: chanceOf(plan.amounts),
  };
  chances.safe = safe.every((off) => off === 0) ? chances.now : chanceOf(safe);
  const others = SHARES.map((share) => chanceOf(plan.amounts.map((off) => share * off)));
  const most = Math.max(chances.safe, chances.all, ...others);
  const leave = chances.now >= LIKELIER && most < chances.now + GAIN;
  return { works: { ...chances, ...(leave && { leave: true as const }) } };
}
