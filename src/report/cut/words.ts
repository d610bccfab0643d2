/** The plan's codes in a machinist's words: reasons, items of the check list, cautions. */
import type { Caution, WorkItem } from '../../engine/cutting/orderOfWork.ts';
import type { Turn, Why } from '../../engine/cutting/steps.ts';
import type { Part } from '../../engine/parts/line.ts';
import type { BeforeTrial } from './beforeTrial.ts';
import type { CutReport } from './definition.ts';

const WHY: Record<Why | 'nearer', string> = {
  cleanup: 'Just enough to clean it up.',
  newLine: 'Just enough to bring the whole line to the new one.',
  film: 'Opens the film to what is wanted.',
  relation: 'Brings this cone to where both cones have their film at one position.',
  nearer: 'Brings the films nearer to what is wanted, as far as the limits let, but not to it.',
};

const TURN: Record<Turn, string> = {
  only: '',
  bushFirst: 'The bush comes first: the journal is the easier to fit to it.',
  straightFirst: 'The straight surface comes before the cones.',
  shallowFirst: 'The shallow comes before the steep.',
  steepLast: 'The steepest comes last on this part, since it sets the touch.',
  faceLast: 'Faces and spacers come last: they are the easiest to correct.',
};

export const reasonText = (why: Why | 'nearer', turn: Turn): string =>
  [WHY[why], TURN[turn]].filter((s) => s !== '').join(' ');

const CAUTION: Record<Caution, string> = {
  guards: 'Guards in place before the wheel or the work turns; stop both before gauging.',
  eyes: 'Eye protection on.',
  wheelSpeed: 'The wheel’s marked speed above that of the machine.',
  ringTest: 'Ring test before mounting: a cracked wheel sounds dull and is thrown away.',
  manual: 'The machine’s own manual comes before anything said here.',
};

export const cautionText = (caution: Caution): string => CAUTION[caution];

type Plain = Exclude<WorkItem['what'], 'angle' | 'cut' | 'sparkOut' | 'gauge' | 'face'>;

const PLAIN: Record<Plain, string> = {
  manual: 'Read the machine’s manual for wheel, speeds and dresser.',
  guards: 'Guards on, eyes protected, loose clothing away.',
  wheelTest: 'Look the wheel over, ring it, run it up behind its guard.',
  dress: 'Dress the wheel, or hone the tool.',
  centres: 'True the centres, clean the centre holes, check that the journal runs without run-out between them.',
  height: 'Check that tool, wheel and dressing diamond stand on the centre.',
  bushHold: 'Hold the bush lightly and true its bore to the indicator, at both ends.',
  oneSetting: 'Cut every surface of this part at this one setting, so that they run true to each other.',
  stone: 'Stone off burrs and high spots with a fine slip.',
  clean: 'Clean every surface of grit before anything is put together.',
  cleanFirst: 'Before anything is cut: clean every surface of grit.',
  trialFirst:
    'Assemble dry with blue: read stand-off, print and shake, and enter them. What that trial tells is safe is what to cut below.',
  trial: 'Assemble dry with blue: read stand-off, print and shake, enter them, and correct.',
  noseTaper: 'Finish the nose taper last, the spindle running in its own bearings.',
};

export function workText(
  item: WorkItem,
  names: {
    surface: (step: number) => string;
    safe: (step: number) => BeforeTrial;
    face: (step: number) => string;
    on: (seat: number) => string;
    isStraight: (seat: number, part: Part) => boolean;
  },
): string {
  switch (item.what) {
    case 'angle':
      if (names.isStraight(item.seat, item.part))
        return `Set slide or table true to the axis for the ${names.on(item.seat)} ${item.part}, so that it comes out straight.`;
      return `Set the angle for the ${names.on(item.seat)} ${item.part} and check it.`;
    case 'cut':
      if (names.safe(item.step) === 'nothing')
        return `Cut the ${names.surface(item.step)} by no more than a trial tells is safe: nothing of it is yet.`;
      if (names.safe(item.step) === 'part')
        return `Cut the ${names.surface(item.step)} to its first stop, gauge, and try it: the rest when the trial says so.`;
      return `Cut the ${names.surface(item.step)}: half way, gauge, then to the stop reading.`;
    case 'sparkOut':
      return `Let the ${names.surface(item.step)} spark out, or take the last pass again without feed.`;
    case 'gauge':
      return `Let it cool, gauge the ${names.surface(item.step)} and write the reading down.`;
    case 'face':
      return `Grind ${names.face(item.step)} flat and parallel to its thickness.`;
    default:
      return PLAIN[item.what];
  }
}

/** Ways to set an angle: in a sentence, and by themselves with what is read. */
export const WAYS: Record<
  CutReport['settings'][number]['ways'][number]['way'],
  { by: string; name: string; what: string }
> = {
  alongBar: {
    by: 'the slide run along a sine bar',
    name: 'Slide run along a sine bar, the indicator at nought',
    what: 'stack',
  },
  sineBar: {
    by: 'the part on a sine bar, its cone levelled',
    name: 'Part on a sine bar, its cone levelled',
    what: 'stack',
  },
  alongSlide: {
    by: 'an indicator on a test bar along the slide',
    name: 'Indicator on a parallel bar, along the slide set over',
    what: 'reads over the travel',
  },
  alongAxis: {
    by: 'an indicator on the cone',
    name: 'Indicator on the cone, along the axis',
    what: 'reads over its length',
  },
  table: {
    by: 'an indicator at the edge of the table',
    name: 'Indicator at the edge of the table',
    what: 'table moves',
  },
  scale: { by: 'the scale of the table', name: 'Scale of the table', what: 'along the arc' },
  tailstock: { by: 'the tailstock set over', name: 'Tailstock set over', what: 'by' },
};
