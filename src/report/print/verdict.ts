/** What a marking-blue print means, in a machinist's words. */
import type { Design } from '../../design/definition.ts';
import { fineText, type System } from '../../design/units.ts';
import type { Verdict } from '../fit/verdict.ts';
import type { PrintReport, PrintShapeReport } from './definition.ts';

export function printVerdict(design: Design, print: PrintReport, system: System): Verdict {
  if (print.status !== 'solved') {
    const why = { unbounded: 'nothing stops the journal going home', infeasible: 'the journal does not go in', stalled: 'the journal finds no seat' }[print.status];
    return { tone: 'stop', headline: `No print: ${why}.`, sentences: [] };
  }
  const bushes = print.press.filter((shape) => shape.part === 'bush');
  const marked = bushes.filter((shape) => shape.word !== 'none');
  const good = bushes.every((shape) => shape.word === 'whole');
  const sentences = bushes.map((shape) => meaning(design, shape, print, system));
  if (good) return { tone: 'good', headline: `With ${fineText(print.thickness, system)} of blue every seat prints along its whole length.`, sentences };
  const bare = bushes.filter((shape) => shape.word === 'none').map((shape) => shape.seat);
  const headline =
    marked.length === 0
      ? `With ${fineText(print.thickness, system)} of blue nothing prints.`
      : bare.length > 0
        ? `The ${listed(marked.map((s) => s.seat))} seat${marked.length > 1 ? 's print' : ' prints'}; the ${listed(bare)} stay${bare.length > 1 ? '' : 's'} clean.`
        : 'Every seat prints, but not evenly.';
  return { tone: 'mend', headline, sentences };
}

const percent = (share: number) => `${(100 * share).toFixed(share < 0.1 ? 1 : 0)} %`;

/** One sentence a seat: what is seen, and what it says about the parts. */
function meaning(design: Design, shape: PrintShapeReport, print: PrintReport, system: System): string {
  const straight = design.seats.find((s) => s.name === shape.seat)!.bush.halfAngle === 0;
  const seen = `${capital(shape.seat)}: ${percent(shape.covered)} of the bush blue`;
  const ends = straight ? { small: 'rear', large: 'nose' } : { small: 'small', large: 'large' };
  switch (shape.word) {
    case 'none':
      return `${capital(shape.seat)}: no blue; its film is more than ${fineText(print.thickness, system)} all over when the spindle is home.`;
    case 'whole':
      return `${seen}, all along and all round: the two surfaces agree to the thickness of the blue.`;
    case 'smallEnd':
      return straight ? `${seen}, a ring at the rear end only: the bush is tighter there.` : `${seen}, a ring at the small end only: the journal is more nearly straight than the bush, or the bush is worn at its mouth.`;
    case 'largeEnd':
      return straight ? `${seen}, a ring at the nose end only: the bush is tighter there.` : `${seen}, a ring at the large end only: the journal tapers more than the bush, or is worn at its small end.`;
    case 'bothEnds':
      return `${seen}, rings at both ends and none between: one of the two lines is hollow.`;
    case 'band':
      return `${seen}, a band part way along: one of the two lines is barrelled, or the bush is worn at both ends.`;
    case 'lobes':
      return `${seen}, in ${shape.patches} patches round: out of round. ${onWhich(shape.seat, print)}`;
    case 'oneSide':
      return `${seen}, on the side at ${shape.side.toFixed(0)}° only: the journal is pressed over to that side.`;
    case 'crossed':
      return `${seen}, at the ${ends.small} end on one side and at the ${ends.large} end on the other: the two axes cross; the seats are out of line.`;
  }
}

/** Turned while pressed, a part's own high places keep to patches on it and smear into a ring on the other. */
function onWhich(seat: string, { turned }: PrintReport): string {
  const of = (part: PrintShapeReport['part']) => turned.find((shape) => shape.seat === seat && shape.part === part);
  const [journal, bush] = [(of('journal')?.patches ?? 0) > 1, (of('bush')?.patches ?? 0) > 1];
  if (journal && !bush) return 'Turned, the patches stay on the journal and smear to a ring in the bush: it is the journal that is lobed.';
  if (bush && !journal) return 'Turned, the patches stay in the bush and smear to a ring on the journal: it is the bush that is lobed.';
  return journal && bush ? 'Turned, both keep their patches: both are lobed.' : 'Turned, both smear to a ring.';
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
const listed = (items: readonly string[]) => (items.length < 2 ? (items[0] ?? '') : `${items.slice(0, -1).join(', ')} and ${items[items.length - 1]}`);
