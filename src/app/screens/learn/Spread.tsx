/** How the answers of a class spread, before and after what is right is shown: a dot each, or a bar each choice. */
import { ticks } from 'd3-array';
import { scaleLinear } from 'd3-scale';
import type { ClassAnswer } from '../../../lessons/classAnswer.ts';
import type { DealtQuestion } from '../../../lessons/deal.ts';
import type { Question } from '../../../lessons/definition.ts';
import { answerSaid, said } from '../../../lessons/sheets.ts';
import type { Speech } from '../../../lessons/template.ts';
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
    </figure>
  );
}

function Bars({ question: { answer }, dealt, answers, open, speech }: Props) {
  if (answer.kind !== 'choice') return null;
  return (
    <ul className="bars">
      {answer.options.map(({ key, text }) => {
        const count = answers.filter((one) => one.answer === key).length;
        return (
          <li key={key} className={open ? (key === dealt.right ? 'is-right' : 'is-off') : ''}>
            <span className="bar" aria-hidden="true">
              <span style={{ width: `${(100 * count) / answers.length}%` }} />
            </span>
            <span>
              {count} · {said(text, dealt, speech)}
              {open && key === dealt.right && ' (right)'}
            </span>
          </li>
        );
      })}
    </ul>
  );
}

const WIDTH = 600;
const EDGE = 24;
const DOT = 6;
const BASE = 96;
const HEIGHT = 144;
const TICKS = 6;

function Dots({ question: { answer }, dealt, answers, open, speech }: Props) {
  const values = answers.map((one) => Number(one.answer)).sort((a, b) => a - b);
  const shown = open ? [...values, Number(dealt.right)] : values;
  const [low, high] = [Math.min(0, ...shown), Math.max(...shown, 0)];
  const as = answer.kind === 'number' ? answer.as : 'fine';
  const unit = unitOf(as, speech);
  const ends: [number, number] = [low, high === low ? low + unit.size : high];
  const x = scaleLinear(ends, [EDGE, WIDTH - EDGE]);
  const stacked = new Map<number, number>();
  const text = (value: number) => answerSaid(answer, value, dealt, speech);
  const middle = values[Math.floor((values.length - 1) / 2)]!;
  return (
    <svg
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={`Answers from ${text(values[0]!)} to ${text(values[values.length - 1]!)}, half of them up to ${text(middle)}`}
    >
      <path className="base" d={`M${EDGE} ${BASE}H${WIDTH - EDGE}`} />
      {values.map((value, i) => {
        const column = Math.round(x(value) / (2 * DOT));
        const row = stacked.get(column) ?? 0;
        stacked.set(column, row + 1);
        // biome-ignore lint/suspicious/noArrayIndexKey: equal answers are told apart by nothing else
        return <circle key={i} cx={x(value)} cy={BASE - DOT - 2 * DOT * row} r={DOT - 1} />;
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
