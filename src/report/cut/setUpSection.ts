/** Settings of the angles and the error budget of the set-ups, for the surfaces that are cut. */
import type { Design, Part } from '../../design/definition.ts';
import { isMadeStraight } from '../../engine/cutting/feeds.ts';
import { toldAt } from '../../engine/cutting/gauges.ts';
import type { Plan } from '../../engine/cutting/plan.ts';
import { type SurfaceSetUp, setUpsOf } from '../../engine/cutting/setUp.ts';
import type { CutStep, SurfaceStep } from '../../engine/cutting/steps.ts';
import type { Surface } from '../../engine/parts/line.ts';
import { hollowOf, offCentreDeviation } from '../../engine/parts/offCentre.ts';
import { degrees, millimetres } from '../convert.ts';
import type { CutReport } from './definition.ts';
import { type Cut, orNull, ownWay, toAngleTools, toErrors } from './toCut.ts';

type SetUp = Pick<CutReport, 'settings' | 'budget'>;

export function setUpSection(design: Design, cut: Cut, plan: Plan | null, steps: readonly CutStep[]): SetUp {
  if (!plan) return { settings: [], budget: { contributions: [], seats: [] } };
  const tools = toAngleTools(cut);
  const nameOf = (seat: number) => design.seats[seat]!.name;
  const cuts = steps
    .filter((step): step is SurfaceStep => step.kind === 'surface')
    .map(({ seat, part, normal, gauges, after }) => {
      const gauge = gauges[0]!.gauge;
      return { seat, part, normal, gauged: 'seat' in gauge ? toldAt(gauge, after) : plan.seats[seat]![part].station };
    });
  const { surfaces, budget } = setUpsOf(
    plan.seats,
    plan.position,
    cuts,
    tools,
    ({ part }) => toErrors(cut, part),
    ownWay(cut),
  );
  return {
    // A straight surface has no angle to set.
    settings: surfaces
      .filter(({ seat, part }) => !isMadeStraight(plan.seats[seat]![part]))
      .map((surface) => ({
        ...settingSection(nameOf(surface.seat), surface, tools.bar),
        hollow: hollowSection(
          plan.seats[surface.seat]![surface.part],
          surface.part,
          surface.gauged,
          toErrors(cut, surface.part).toolHeight,
        ),
      })),
    budget: {
      contributions: budget.contributions.map(({ seat, part, cause, film }) => ({
        seat: nameOf(seat),
        part,
        cause,
        film: millimetres(film),
      })),
      seats: budget.seats.map(({ seat, sum, likely }) => ({
        seat: nameOf(seat),
        sum: millimetres(sum),
        likely: millimetres(likely),
      })),
    },
  };
}

/** Points of the flank that are drawn. */
const DRAWN = 16;

function hollowSection(
  surface: Surface,
  part: Part,
  gauged: number,
  height: number,
): SetUp['settings'][number]['hollow'] {
  const hollow = hollowOf(surface, gauged, height);
  if (!hollow) return null;
  const { from, to } = surface;
  const profile = Array.from({ length: DRAWN + 1 }, (_, i): [number, number] => {
    const z = from + ((to - from) * i) / DRAWN;
    return [millimetres(z), millimetres(offCentreDeviation(surface, part, gauged, height, z)!)];
  });
  return {
    height: millimetres(height),
    depth: millimetres(hollow.depth),
    angleError: degrees(hollow.angleError),
    profile,
  };
}

function settingSection(
  seat: string,
  { part, halfAngle, stack, blocks, blocksFilm, dresser, stands, room, ways, recommended, used, needed }: SurfaceSetUp,
  bar: number,
): Omit<SetUp['settings'][number], 'hollow'> {
  const stacked = blocks.kind === 'stack';
  return {
    seat,
    part,
    halfAngle: degrees(halfAngle),
    bar: millimetres(bar),
    stack: millimetres(stack),
    blocks: stacked ? blocks.blocks.map(millimetres) : null,
    blocksError: stacked ? millimetres(blocks.error) : null,
    blocksFilm: orNull(blocksFilm),
    dresser: degrees(dresser),
    stands: stands === null ? null : degrees(stands),
    room: orNull(room),
    ways: ways.map(({ way, reading, error, lean, film, enough }) => ({
      way,
      reading: millimetres(reading),
      error: degrees(Math.hypot(error, lean)),
      film: millimetres(film),
      enough,
    })),
    recommended,
    used,
    needed: needed && { indicator: millimetres(needed.indicator), travel: millimetres(needed.travel) },
  };
}
