/**
 * The picture of a question on paper: the pair as it stands, its half angles and films, and a blank for every film that
 * what is let go will change; on the answer sheet as it stands then. What else a question draws stands there as it does
 * before an answer.
 */
import { useId } from 'react';
import type { Design } from '../../../design/definition.ts';
import { angleSaid } from '../../../design/units.ts';
import type { DealtQuestion } from '../../../lessons/deal.ts';
import type { Question } from '../../../lessons/definition.ts';
import { notToScale, type Shown, speechIn } from '../../../lessons/sheets.ts';
import { type Speech, told } from '../../../lessons/template.ts';
import { metres } from '../../../report/convert.ts';
import { fitOf } from '../../../report/fit/fitOf.ts';
import { linesOf } from '../../../report/inFrame.ts';
import { type Drawn, drawnAt } from '../../pictures/drawn.ts';
import { factorFor } from '../../pictures/factor.ts';
import { middleOf } from '../../pictures/SeatNotes.tsx';
import { SectionParts } from '../../pictures/SectionParts.tsx';
import { sectionFrame } from '../../pictures/sectionFrame.ts';
import { onScreen } from '../../pictures/sectionLayout.ts';
import { spread } from '../../pictures/spread.ts';
import { timesText } from '../../pictures/timesText.ts';
import { boxOf, closeUp, leansText } from './closeUp.ts';
import { HeapPicture } from './HeapPicture.tsx';
import { Layer } from './Layer.tsx';
import { SetUps } from './SetUps.tsx';

/** px of the drawing: as wide as the leaf between its margins, or beside the slips; the lines of the notes above it */
const WHOLE = 640;
const BESIDE = 390;
/** Seats whose notes have room beside the slips. */
const FEW = 2;
const HEIGHT = 150;
const LINE = 19;
const NOTE = 190;
/** Gaps on paper: as large as the page holds. */
const FACTOR = 400;
/** mm: a film that changes by less does not change */
const SAME = 1e-6;

interface Props {
  question: Question;
  dealt: DealtQuestion;
  /** on the answer sheet: as it stands once it was let go */
  answered: boolean;
  /** what is drawn before the answer */
  shown: Shown;
  speech: Speech;
}

export function PaperPicture({ question, dealt, answered, shown, speech }: Props) {
  const { view } = question;
  const design = answered ? dealt.to : shown.design;
  const blank = !answered && !shown.own;
  // The seats magnified alone stand beside other pictures, which have what is asked for.
  const pair = view.section || (view.lenses && !view.setUps && !view.layer && !view.spread);
  return (
    <div className="paper-picture">
      {pair && <Pair {...{ question, dealt, answered, shown, speech }} />}
      {!answered && view.setUps && (
        <>
          <SetUps
            design={asksAngle(question) ? notToScale(design, Number(dealt.right)) : design}
            which={view.setUps}
            system={speech.system}
          />
          {asksAngle(question) && <p className="fine">Not to scale: the angle is not the one that is asked for.</p>}
        </>
      )}
      {view.spread && dealt.spread && (
        <HeapPicture
          view={view.spread}
          // What came of it before is what the question before asks for.
          spread={blank ? { ...dealt.spread, was: null } : dealt.spread}
          answer={null}
          open={answered}
          figures
          speech={speechIn(dealt, speech)}
        />
      )}
      {view.layer && dealt.layer && !view.spread && !blank && (
        <Layer
          view={view.layer}
          ends={dealt.layer}
          now={answered ? dealt.layer.to : dealt.layer.from}
          answer={null}
          figures={answered || view.figures === undefined}
          open={answered}
          speech={speechIn(dealt, speech)}
        />
      )}
    </div>
  );
}

const asksAngle = ({ answer }: Question) => answer.kind === 'number' && answer.as === 'angle';
const standing = (design: Design) => metres(design.position ?? 0);

function Pair({ question, dealt, answered, shown, speech }: Props) {
  const id = useId();
  const width = answered && dealt.to.seats.length <= FEW ? BESIDE : WHOLE;
  const both = [shown.design, answered || shown.own ? dealt.to : shown.design];
  const enlarged = Math.min(...both.map((one) => factorFor(linesOf(one), standing(one), FACTOR)));
  const factor = !answered && shown.asIs ? 1 : enlarged;
  const [before, after] = both.map((one) => drawnAt(linesOf(one), standing(one), factor)) as [Drawn, Drawn];
  const drawn = answered ? after : before;
  const frame = sectionFrame(drawn);
  const notes = notesOf({ question, dealt, answered, shown, speech });
  const lines = Math.max(...notes.map((note) => note.lines.length));
  const head = lines * LINE + 4;
  const inner = closeUp(boxOf([before, after]), frame, { width, height: HEIGHT + 2 * LINE });
  // The notes of the screen have one line; those of paper stand above the drawing.
  const at = { ...inner, middle: { x: inner.middle.x, y: inner.middle.y + head - inner.notesEnd } };
  const height = head + HEIGHT;
  const points = drawn.seats.map((seat) => onScreen(at, middleOf(seat), 1));
  const order = points.map((_, i) => i).sort((a, b) => points[a]!.x - points[b]!.x);
  const middles = spread(
    order.map((i) => ({ at: points[i]!.x, size: NOTE })),
    0,
    width,
    8,
  );
  return (
    <figure>
      <svg viewBox={`0 0 ${width} ${height}`} role="img" aria-label="Upper half of the pair, cut along its axis">
        <clipPath id={`${id}part`}>
          <rect y={head} width={width} height={HEIGHT} />
        </clipPath>
        <g clipPath={`url(#${id}part)`}>
          <SectionParts.Journal frame={frame} at={at} id={id} moved={fitOf(shown.design).position * factor} />
          <SectionParts.Bush frame={frame} at={at} id={id} />
          <SectionParts.Films drawn={drawn} frame={frame} at={at} id={id} />
          <SectionParts.Axes drawn={drawn} frame={frame} at={at} />
        </g>
        {order.map((i, k) => {
          const x = middles?.[k] ?? points[i]!.x;
          return (
            <g key={notes[i]!.lines[0]} className="note">
              <path d={`M${x} ${head}L${points[i]!.x} ${Math.max(head, points[i]!.y)}`} />
              <circle cx={points[i]!.x} cy={points[i]!.y} r={2.5} />
              {notes[i]!.lines.map((text, line) => (
                <text
                  key={text}
                  x={x}
                  y={(line + 1) * LINE - 4}
                  textAnchor="middle"
                  fontWeight={line === 0 ? 700 : 400}
                >
                  {text}
                </text>
              ))}
            </g>
          );
        })}
      </svg>
      <figcaption>
        {factor === 1 ? 'Gaps are not enlarged.' : `Gaps drawn ${timesText(factor)}${leansText(drawn)}.`} The nose is on
        the right.
        {!answered && !shown.own && ' As it stood at first: what came after is yours to find.'}
      </figcaption>
    </figure>
  );
}

/** Of every seat: its name, what is known of it, and a blank for what is not. */
function notesOf({ question, dealt, answered, shown, speech }: Props): { lines: string[] }[] {
  const { answer, view } = question;
  const [before, after] = [fitOf(dealt.from), fitOf(dealt.to)];
  // Whether one changes at all may be what is to be chosen.
  const asksFilm = answer.kind !== 'choice' && !asksAngle(question);
  return dealt.from.seats.map(({ name, journal, bush }, i) => {
    const [was, is] = [before.seats[i]!.leastFilm, after.seats[i]!.leastFilm];
    const changes = was === null || is === null || Math.abs(is - was) > SAME;
    const angles = [journal, bush].map(({ halfAngle }) => angleSaid(halfAngle, speech.way));
    const leans = angles[0] === angles[1] ? angles[0]! : `journal ${angles[0]}, bush ${angles[1]}`;
    const film = (mm: number | null) =>
      mm === null ? 'apart' : Math.abs(mm) < SAME ? 'touches' : `film ${told(mm, 'fine', speechIn(dealt, speech))}`;
    const known = view.figures === undefined && shown.own;
    return {
      lines: [
        name,
        ...(asksAngle(question) ? [] : [leans]),
        ...(answered ? [film(is)] : known ? [film(was)] : []),
        ...(!answered && asksFilm && changes ? [`then ${BLANK}`] : []),
      ],
    };
  });
}
const BLANK = '____________';
