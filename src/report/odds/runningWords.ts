/** The odds of the run in a machinist's words. */
import type { Design } from '../../design/definition.ts';
import { measureText } from '../../design/measures.ts';
import { fineText, plusMinusText, type System } from '../../design/units.ts';
import { digits } from '../film/figures.ts';
import { listed } from '../listed.ts';
import type { RunningReport } from './definition.ts';
import { timesText } from './times.ts';

/** K: less is not told. */
const TENTH_KELVIN = 0.1;
/** A chance that is worth a sentence. */
const SOME = 0.005;

/** How often it runs well, then where it fails, then how warm; last how sure. */
export function runningSentences(design: Design, report: RunningReport, system: System): string[] {
  const { well, parted, runs, cool, calm } = report;
  const fails = [
    ...(parted.all!.share < 1 - SOME ? [partedText(design, report, system)] : []),
    ...(runs.share - cool.share > SOME ? [`it runs hotter than oil lasts ${timesText(runs.share - cool.share)}`] : []),
    ...(runs.share - calm.share > SOME ? [`it whirls, warm, ${timesText(runs.share - calm.share)}`] : []),
  ];
  return [
    `${which(report)} it runs well ${timesText(well.share)}: every film parts the surfaces from cold to warm, no oil is hotter than it lasts, nothing whirls.`,
    fails.length === 0 ? '' : `${capital(listed(fails))}.`,
    endsText(report),
    warmText(report, system),
  ].filter((sentence) => sentence !== '');
}

const which = ({ of, at }: RunningReport) =>
  `${of === 'planned' ? 'Cut as planned' : 'As the parts are now'}, ${at === 'best' ? 'each set where its films suit it best,' : 'set as it is,'}`;

const capital = (text: string) => `${text[0]!.toUpperCase()}${text.slice(1)}`;

function partedText({ seats }: Design, { parted, needed }: RunningReport, system: System): string {
  const [thin] = seats.map(({ name }) => ({ name, share: parted[name]!.share })).sort((a, b) => a.share - b.share);
  return `every film keeps ${fineText(needed, system)}, three times the roughness, ${timesText(parted.all!.share)}, the ${thin!.name} film ${timesText(thin!.share)}`;
}

function endsText({ shut, seizes, standing }: RunningReport): string {
  const told = [
    ...(shut.share > SOME ? [`it has no film to start on ${timesText(shut.share)}`] : []),
    ...(seizes.share > SOME ? [`it seizes as it warms ${timesText(seizes.share)}`] : []),
    ...(standing.share > SOME ? [`it stands still ${timesText(standing.share)}`] : []),
  ];
  return told.length === 0 ? '' : `${capital(listed(told))}.`;
}

function warmText({ hottest, power, stop }: RunningReport, system: System): string {
  if (!hottest || !power || !stop) return '';
  const between = (low: string, high: string) => (low === high ? low : `${low} to ${high}`);
  const celsius = (value: number) => measureText('temperature', value, system);
  const force = (value: number) => measureText('force', Math.abs(value), system);
  const ends = [stop.p05, stop.p95].map(Math.abs).sort((a, b) => a - b);
  const held = Math.max(...ends) < 0.05 ? '' : `; a stop holds it with ${between(force(ends[0]!), force(ends[1]!))}`;
  return `Warm, the hottest part stands at ${between(celsius(hottest.p05), celsius(hottest.p95))} and ${between(digits(power.p05), digits(power.p95))} W are lost${held} (9 times in 10).`;
}

/** On what that rests. */
export function runningBasis({ draws, unsettled, noShape, grid, well }: RunningReport, system: System): string {
  const { rows, columns, checked, otherwise, film, hottest } = grid;
  const percent = (share: number) => `${(100 * share).toFixed(0)}`;
  const lost = unsettled + noShape;
  return [
    `${draws} spindles run; that it runs well lies between ${percent(well.low)} and ${percent(well.high)} in 100, 19 times in 20.`,
    ...(lost > 0
      ? [`${lost} more are not counted: ${unsettled} whose run was not found, ${noShape} that are no pair.`]
      : []),
    checked === 0
      ? `Films on ${rows} × ${columns} cells a seat; not checked.`
      : `Films on ${rows} × ${columns} cells a seat: by ${checked} of them on the grid of Run, 19 films in 20 are told to ${fineText(film, system)} and temperatures to ${measureText('warmer', Math.max(hottest, TENTH_KELVIN), system)}${otherwise > 0 ? `; ${otherwise} end otherwise there` : ''}.`,
  ].join(' ');
}

/** How far the films that Run tells may be off, of pairs as everything known allows, each run. */
export function filmDoubtSentence({ seats }: Design, report: RunningReport, system: System): string {
  const { draws, runs, films } = report;
  const told = seats.flatMap(({ name }) => {
    const film = films[name];
    return film ? [`${name} ${plusMinusText(film.mean, film.sd, system)}`] : [];
  });
  if (told.length === 0) return '';
  const fail = draws - Math.round(runs.share * draws);
  return `Run through the oil with ${draws} pairs drawn as everything known allows, the least films from cold to warm are ${listed(told)} (19 times in 20)${fail > 0 ? `; ${fail} of them do not run` : ''}.`;
}
