/** What every report must keep to, whatever the design: told as a list of what is broken, empty where all is well. */

import type { Design } from '../../src/design/definition.ts';
import { cutVerdict } from '../../src/report/cut/verdict.ts';
import { report as definition, type Report } from '../../src/report/definition.ts';
import { filmVerdict } from '../../src/report/film/verdict.ts';
import { fitSection } from '../../src/report/fit/section.ts';
import { fitVerdict, type Verdict } from '../../src/report/fit/verdict.ts';
import { measureVerdict } from '../../src/report/measure/verdict.ts';
import { fitMeasured } from '../../src/report/measure/withMeasured.ts';
import { playVerdict } from '../../src/report/play/verdict.ts';
import { printVerdict } from '../../src/report/print/verdict.ts';
import { leastFilm, places } from '../engine/play/reference.ts';
import { beliefLaws, oddsLaws, oddsWords } from './lawsOdds.ts';

export type Broken = string;

/** mm: films are told to this. */
const ROUNDING = 1e-9;
/** Whatever is larger carries the rounding of its own size. */
const sizeOf = (design: Design) =>
  Math.max(
    1,
    ...design.seats.flatMap(({ journal, bush }) =>
      [journal, bush].flatMap((s) => [s.from, s.to, s.station, s.diameter].map(Math.abs)),
    ),
  ) / 100;

export function brokenLaws(design: Design, report: Report): Broken[] {
  return [
    ...schemaLaws(report),
    ...fitLaws(design, report),
    ...playLaws(design, report),
    ...filmLaws(report),
    ...cutLaws(design, report),
    ...beliefLaws(design, report),
    ...oddsLaws(design, report),
    ...wordLaws(design, report),
  ];
}

function schemaLaws(report: Report): Broken[] {
  const odd = unfinite(report, 'report');
  const parsed = definition.safeParse(JSON.parse(JSON.stringify(report)));
  const issues = parsed.error?.issues ?? [];
  return [
    ...odd.slice(0, 3),
    ...issues.slice(0, 3).map(({ path, message, code }) => `schema: ${path.join('.')} ${code} ${message}`),
  ];
}

/** Places of numbers that JSON has no word for, and of values that it would drop. */
function unfinite(value: unknown, path: string): Broken[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${path} is ${value}`];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => unfinite(inner, `${path}.${key}`));
}

function fitLaws(design: Design, { fit }: Report): Broken[] {
  if (!fit) return [];
  const broken: Broken[] = [];
  const slack = 2 * ROUNDING + ROUNDING * sizeOf(design);
  for (const { name, leastFilm: least, greatestFilm: greatest } of fit.seats) {
    if ((least === null) !== (greatest === null) || (least !== null && greatest !== null && least > greatest))
      broken.push(`fit: ${name} least film ${least}, greatest ${greatest}`);
  }
  for (const [name, film] of Object.entries(fit.filmsAtFirst)) {
    if (film !== null && film < -1e-6 && !fit.blocked.includes(name))
      broken.push(`fit: ${name} is ${film} at first touch and not told as blocked`);
  }
  if (fit.permitted) {
    if (fit.permitted.from > fit.permitted.to) broken.push('fit: permitted from beyond to');
    for (const position of [fit.permitted.from, fit.permitted.to]) {
      fitSection({ ...design, position }).seats.forEach(({ name, closes, leastFilm: least }, i) => {
        const film = design.seats[i]!.film;
        // Where a line goes back on itself a film of a position need not be that of the film wanted.
        if (!film || least === null || closes !== 'never') return;
        if (Math.abs(least - film.target) > (film.tolerance ?? 0) + slack || least < -slack)
          broken.push(`fit: permitted ${position}, but there ${name} has ${least}`);
      });
    }
  }
  return broken;
}

/** Angles looked at round a seat. */
const ROUND = 72;

function playLaws(design: Design, { play }: Report): Broken[] {
  if (play?.seated.status !== 'solved' || !play.seated.pose) return [];
  const { pose } = play.seated;
  if (Math.abs(pose.z) > 10) return [];
  const least = leastFilm(places(design, pose.z), pose, ROUND);
  return least < -ROUNDING * Math.max(1, sizeOf(design)) ? [`play: seated with a film of ${least}`] : [];
}

/** Of the load: what may be left of the balance; thin films hold no more digits. */
const BALANCE = 1e-3;

function filmLaws({ film }: Report): Broken[] {
  if (!film || (film.status !== 'found' && film.status !== 'stopped') || !film.load || !film.force) return [];
  const { force, load, stop } = film;
  const left = [force.x + load.force.x, force.y + load.force.y, force.z + load.force.z + (stop ?? 0)];
  const size = Math.max(1e-3, Math.hypot(load.force.x, load.force.y, load.force.z));
  return Math.hypot(...left) > BALANCE * size
    ? [`film: ${left.map((n) => n.toPrecision(3)).join(', ')} N are left of ${size} N`]
    : [];
}

function cutLaws(design: Design, { cut }: Report): Broken[] {
  if (!cut?.feasible) return [];
  return design.seats.flatMap(({ name, film }) => {
    const reached = cut.films[name];
    return film && reached !== undefined && reached !== null && Math.abs(reached - film.target) > 2e-6
      ? [`cut: feasible, but ${name} has ${reached} and wants ${film.target}`]
      : [];
  });
}

function wordLaws(design: Design, report: Report): Broken[] {
  const verdicts = (['metric', 'inch'] as const).flatMap((system): Pick<Verdict, 'headline' | 'sentences'>[] => [
    ...oddsWords(design, report, system).map((sentence) => ({ headline: sentence, sentences: [] })),
    ...(report.fit ? [fitVerdict(design, report.fit, system)] : []),
    ...(report.play ? [playVerdict(design, report.play, report.fit!, system)] : []),
    ...(report.print ? [printVerdict(design, report.print, system)] : []),
    ...(report.film ? [filmVerdict(design, report.film, system)] : []),
    ...(report.measure ? [measureVerdict(design, report.measure, fitMeasured(design, report.measure), system)] : []),
    ...(report.cut ? [cutVerdict(design, report.cut, system)] : []),
  ]);
  // A seat may be called null.
  const names = new RegExp(design.seats.map(({ name }) => name.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&')).join('|'), 'g');
  return verdicts.flatMap(({ headline, sentences }) =>
    [headline, ...sentences].flatMap((sentence): Broken[] => {
      if (sentence === '') return ['words: an empty sentence'];
      return /undefined|NaN|null|Infinity|\[object/.test(sentence.replace(names, '')) ? [`words: ${sentence}`] : [];
    }),
  );
}
