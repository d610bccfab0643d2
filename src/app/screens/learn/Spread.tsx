/**
 * How the answers of a class spread, before and after what is right is shown: a dot each, or a bar each choice, and how
 * sure each was.
 */
import { ticks } from 'd3-array';
import { scaleLinear } from 'd3-scale';
import type { CalledOut, ClassAnswer } from '../../../lessons/classAnswer.ts';
import type { DealtQuestion } from '../../../lessons/deal.ts';
import type { Question } from '../../../lessons/definition.ts';
import { answerSaid, said } from '../../../lessons/sheets.ts';
import type { Speech } from '../../../lessons/template.ts';
import { CALLED_WORDS, SHORT_WORDS } from './Made.tsx';
import { unitOf } from './typed.ts';

interface Props {
  question: Question;
  dealt: DealtQuestion;
  answers: readonly ClassAnswer[];
  /** whether what is right is shown */
  open: boolean;
  speech: Speech;
}

export function Spread(props: Props) {
  const { answers, question } = props;
  return (
    <figure className="spread">
      <figcaption>
        {answers.length === 0 ? 'No answers yet.' : `${answers.length} ${answers.length === 1 ? 'answer' : 'answers'}`}
      </figcaption>
      {answers.length > 0 && (question.answer.kind === 'choice' ? <Bars {...props} /> : <Dots {...props} />)}
      {answers.length > 0 && <Key answers={answers} />}
    </figure>
  );
}

/** The surest first: filled, half, an outline; a hand of which that was not asked has a broken one. */
const SUREST = ['sure', 'think', 'guess', 'unsaid'] as const satisfies readonly CalledOut[];

const bySure = (answers: readonly ClassAnswer[]) =>
  SUREST.map((sure) => ({ sure, count: answers.filter((one) => one.sure === sure).length })).filter(
    ({ count }) => count > 0,
  );

function Key({ answers }: Pick<Props, 'answers'>) {
  return (
    <ul className="sure-key">
      {bySure(answers).map(({ sure, count }) => (
        <li key={sure}>
          <svg width={18} height={18} viewBox="-9 -9 18 18" aria-hidden="true">
            <Dot sure={sure} x={0} y={0} r={6} />
          </svg>
          {CALLED_WORDS[sure]}: {count}
        </li>
      ))}
    </ul>
  );
}

function Dot({ sure, x, y, r }: { sure: CalledOut; x: number; y: number; r: number }) {
  return (
    <g className={`by-${sure}`} transform={`translate(${x} ${y})`}>
      <circle r={r - 1} />
      {sure === 'think' && <path d={`M0 ${1 - r}A${r - 1} ${r - 1} 0 0 0 0 ${r - 1}Z`} />}
    </g>
  );
}

function Bars({ question: { answer }, dealt, answers, open, speech }: Props) {
  if (answer.kind !== 'choice') return null;
  return (
    <ul className="bars">
      {answer.options.map(({ key, text }) => {
        const here = answers.filter((one) => one.answer === key);
        const sure = bySure(here);
        return (
          <li key={key} className={open ? (key === dealt.right ? 'is-right' : 'is-off') : ''}>
            <span className="bar" aria-hidden="true">
              {sure.map(({ sure: one, count }) => (
                <span key={one} className={`by-${one}`} style={{ width: `${(100 * count) / answers.length}%` }} />
              ))}
            </span>
            <span>
              {here.length} · {said(text, dealt, speech)}
              {open && key === dealt.right && ' (right)'}
              {here.length > 0 && <span className="fine"> {sureText(here)}</span>}
            </span>
          </li>
        );
      })}
    </ul>
  );
}

/** “2 sure, 1 a guess”; '' where nobody was asked. */
const sureText = (answers: readonly ClassAnswer[]): string =>
  bySure(answers)
    .filter(({ sure }) => sure !== 'unsaid')
    .map(({ sure, count }) => `${count} ${SHORT_WORDS[sure]}`)
    .join(', ');

const WIDTH = 600;
const EDGE = 24;
const DOT = 6;
const BASE = 96;
const HEIGHT = 144;
const TICKS = 6;

function Dots({ question: { answer }, dealt, answers, open, speech }: Props) {
  const sorted = answers
    .map(({ answer: value, sure }) => ({ value: Number(value), sure }))
    .sort((a, b) => a.value - b.value || SUREST.indexOf(a.sure) - SUREST.indexOf(b.sure));
  const values = sorted.map(({ value }) => value);
  const shown = open ? [...values, Number(dealt.right)] : values;
  const [low, high] = [Math.min(0, ...shown), Math.max(...shown, 0)];
  const as = answer.kind === 'number' ? answer.as : 'fine';
  const unit = unitOf(as, speech);
  const ends: [number, number] = [low, high === low ? low + unit.size : high];
  const x = scaleLinear(ends, [EDGE, WIDTH - EDGE]);
  const stacked = new Map<number, number>();
  const columnOf = (value: number) => Math.round(x(value) / (2 * DOT));
  const highest = Math.max(...values.map((value) => values.filter((one) => columnOf(one) === columnOf(value)).length));
  // A whole class of one mind overlaps, and none of it is above the picture.
  const step = Math.min(2 * DOT, (BASE - 2 * DOT) / Math.max(1, highest - 1));
  const text = (value: number) => answerSaid(answer, value, dealt, speech);
  const sureSaid = sureText(answers);
  const middle = values[Math.floor((values.length - 1) / 2)]!;
  return (
    <svg
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={`Answers from ${text(values[0]!)} to ${text(values[values.length - 1]!)}, half of them up to ${text(middle)}${sureSaid === '' ? '' : `; ${sureSaid}`}`}
    >
      <path className="base" d={`M${EDGE} ${BASE}H${WIDTH - EDGE}`} />
      {sorted.map(({ value, sure }, i) => {
        const column = columnOf(value);
        const row = stacked.get(column) ?? 0;
        stacked.set(column, row + 1);
        // biome-ignore lint/suspicious/noArrayIndexKey: equal answers are told apart by nothing else
        return <Dot key={i} sure={sure} x={x(value)} y={BASE - DOT - step * row} r={DOT} />;
      })}
      {ticks(ends[0] / unit.size, ends[1] / unit.size, TICKS).map((tick) => (
        <g key={tick} className="tick">
          <path d={`M${x(tick * unit.size)} ${BASE}v7`} />
          <text x={x(tick * unit.size)} y={BASE + 23} textAnchor="middle">
            {`${tick}`.replace('-', '−')}
          </text>
        </g>
      ))}
      <text x={WIDTH - 4} y={HEIGHT - 4} textAnchor="end">
        {answer.label}
        {unit.name === '' ? '' : `, ${unit.name}`}
      </text>
      {open && (
        <g className="right">
          <path d={`M${x(Number(dealt.right))} 18V${BASE + 6}`} />
          <text x={x(Number(dealt.right))} y={13} textAnchor={x(Number(dealt.right)) > WIDTH / 2 ? 'end' : 'start'}>
            {text(Number(dealt.right))}
          </text>
        </g>
      )}
    </svg>
  );
}
