/** Settings of the angles and the error budget of the set-ups, for the surfaces that are cut. */
import type { Design, Part } from '../../design/definition.ts';
import { angleSetting } from '../../engine/cutting/angleSetting.ts';
import { type Contribution, errorBudget } from '../../engine/cutting/errorBudget.ts';
import { toldAt } from '../../engine/cutting/gauges.ts';
import { hollowOf, offCentreDeviation } from '../../engine/cutting/offCentre.ts';
import type { Plan } from '../../engine/cutting/plan.ts';
import type { CutStep, SurfaceStep } from '../../engine/cutting/steps.ts';
import type { Surface } from '../../engine/geometry/line.ts';
import { degrees, millimetres } from '../toEngine.ts';
import type { CutReport } from './definition.ts';
import { type Cut, toAngleTools, toErrors, wayOf } from './toCut.ts';

type SetUp = Pick<CutReport, 'settings' | 'budget'>;

export function setUpSection(design: Design, cut: Cut, plan: Plan | null, steps: readonly CutStep[]): SetUp {
  const surfaces = steps.filter((step): step is SurfaceStep => step.kind === 'surface');
  if (!plan) return { settings: [], budget: { contributions: [], seats: [] } };
  const tools = toAngleTools(cut);
  const nameOf = (seat: number) => design.seats[seat]!.name;
  const settings: SetUp['settings'] = [];
  const contributions: Contribution[] = [];
  for (const { seat, part, normal, gauges, after } of surfaces) {
    const gauge = gauges[0]!.gauge;
    const gauged = 'seat' in gauge ? toldAt(gauge, after) : plan.seats[seat]![part].station;
    const setting = angleSetting(plan.seats, plan.position, seat, part, gauged, tools);
    const errors = toErrors(cut, part, 0);
    settings.push({ ...settingSection(nameOf(seat), setting, tools.bar), hollow: hollowSection(plan.seats[seat]![part], part, gauged, errors.toolHeight) });
    // A tailstock is not set over for a steep cone, and blocks reach no small angle; then the first way that there is.
    const way = setting.ways.find(({ way }) => way === wayOf(cut)) ?? setting.ways[0]!;
    contributions.push(...errorBudget(plan.seats, plan.position, [{ seat, part, normal, gauged }], { ...toErrors(cut, part, way.error), way: way.way }).contributions);
  }
  contributions.sort((a, b) => b.film - a.film);
  const cutSeats = [...new Set(surfaces.map(({ seat }) => seat))].sort((a, b) => a - b);
  const filmsOf = (seat: number) => contributions.filter((c) => c.seat === seat).map((c) => millimetres(c.film));
  return {
    settings,
    budget: {
      contributions: contributions.map(({ seat, part, cause, film }) => ({ seat: nameOf(seat), part, cause, film: millimetres(film) })),
      seats: cutSeats.map((seat) => ({ seat: nameOf(seat), sum: filmsOf(seat).reduce((a, b) => a + b, 0), likely: Math.hypot(...filmsOf(seat)) })),
    },
  };
}

/** Points of the flank that are drawn. */
const DRAWN = 16;

function hollowSection(surface: Surface, part: Part, gauged: number, height: number): SetUp['settings'][number]['hollow'] {
  const hollow = hollowOf(surface, gauged, height);
  if (!hollow) return null;
  const { from, to } = surface;
  const profile = Array.from({ length: DRAWN + 1 }, (_, i): [number, number] => {
    const z = from + ((to - from) * i) / DRAWN;
    return [millimetres(z), millimetres(offCentreDeviation(surface, part, gauged, height, z)!)];
  });
  return { height: millimetres(height), depth: millimetres(hollow.depth), angleError: degrees(hollow.angleError), profile };
}

function settingSection(seat: string, { part, halfAngle, stack, blocks, dresser, stands, ways }: ReturnType<typeof angleSetting>, bar: number): Omit<SetUp['settings'][number], 'hollow'> {
  const stacked = blocks.kind === 'stack';
  return {
    seat,
    part,
    halfAngle: degrees(halfAngle),
    bar: millimetres(bar),
    stack: millimetres(stack),
    blocks: stacked ? blocks.blocks.map(millimetres) : null,
    blocksError: stacked ? millimetres(blocks.error) : null,
    dresser: degrees(dresser),
    stands: stands === null ? null : degrees(stands),
    ways: ways.map(({ way, reading, error, film, enough }) => ({ way, reading: millimetres(reading), error: degrees(error), film: millimetres(film), enough })),
  };
}
