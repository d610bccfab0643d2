/**
 * One gap told in three ways: along the axis (travel), square to the axis (across, of one side) and square to the side
 * (the film). A very shallow cone is drawn steeper than it is, and that is said.
 */
import type { DealtQuestion } from '../../../lessons/deal.ts';
import type { Question } from '../../../lessons/definition.ts';
import { type Speech, told } from '../../../lessons/template.ts';
import { radians } from '../../../report/convert.ts';

const WIDTH = 400;
const HEIGHT = 230;
/** px: the film, square to the side. */
const FILM = 64;
/** Degrees: a side is drawn no shallower, and no steeper. */
const LEAST = 20;
const MOST = 56;
const RIGHT_ANGLE = 9;
/** mm: two lengths that differ by less are one */
const SAME = 1e-8;

interface Props {
  of: string;
  /** degrees */
  angle: number;
  /** mm, along the axis */
  travel: number;
  /** what is right of the question, whatever its sign */
  right: number;
  speech: Speech;
}

/** All that a question has. */
export function Triangles({ question, dealt, speech }: { question: Question; dealt: DealtQuestion; speech: Speech }) {
  const { triangles = [] } = question.view;
  if (triangles.length === 0) return null;
  return (
    <div className="triangles">
      {triangles.map(({ of }, i) => (
        <Triangle key={of} of={of} {...dealt.triangles[i]!} right={Math.abs(Number(dealt.right))} speech={speech} />
      ))}
    </div>
  );
}

function Triangle({ of, angle, travel, right, speech }: Props) {
  const drawn = Math.min(MOST, Math.max(LEAST, angle));
  const { sin, cos, tan } = sidesOf(drawn);
  const real = sidesOf(angle);
  const along = FILM / sin;
  // The corner on the bush at which all three begin; the journal's side lies toward the nose of it.
  const [x, y] = [WIDTH / 2 - along / 2, HEIGHT / 2 - 20];
  const across = along * tan;
  const foot = { x: x + FILM * sin, y: y + FILM * cos };
  const line = (px: number, py: number) => {
    const far = WIDTH;
    return `${px - far * cos} ${py + far * sin}L${px + far * cos} ${py - far * sin}`;
  };
  const fine = (mm: number) => told(mm, 'fine', speech);
  // As the texts beside it have them: what is right as it is asked for, what leads to it as it is reckoned with.
  const step = (mm: number) => told(mm, Math.abs(mm - right) < SAME ? 'fine' : 'reckoned', speech);
  const labels = [
    { name: 'travel, along the axis', text: step(travel) },
    { name: 'across on this side, square to the axis: travel × tangent', text: fine(travel * real.tan) },
    { name: 'film, square to the side: travel × sine', text: step(travel * real.sin) },
  ];
  return (
    <figure className="triangle">
      <figcaption>
        Of {of}: one gap, told in three ways
        {drawn !== angle && (
          <span className="fine"> (the side is drawn {drawn > angle ? 'steeper' : 'less steep'} than it is)</span>
        )}
      </figcaption>
      <svg
        viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
        role="img"
        aria-label={labels.map(({ name, text }) => `${name}: ${text}`).join('; ')}
      >
        <path className="bush" d={`M0 0L${line(x, y)}L${WIDTH} 0Z`} />
        <path
          className="oil"
          d={`M${line(x, y)}L${line(x + along, y)
            .split('L')
            .reverse()
            .join('L')}Z`}
        />
        <path className="journal" d={`M${line(x + along, y)}L${WIDTH} ${HEIGHT}L0 ${HEIGHT}Z`} />
        <path className="edge" d={`M${line(x, y)}M${line(x + along, y)}`} />
        <path className="leg" d={`M${x} ${y}h${along}M${x} ${y}v${across}`} />
        <path className="square" d={`M${foot.x} ${foot.y}L${x} ${y}`} />
        <path className="leg" d={squareMark(foot, drawn)} />
        {['1', '2', '3'].map((name, i) => {
          const at = [
            [x + along * 0.62, y - 6],
            [x - 8, y + across * 0.62],
            [x + (foot.x - x) * 0.55 + 9, y + (foot.y - y) * 0.55 + 2],
          ][i]!;
          return (
            <text key={name} x={at[0]} y={at[1]} textAnchor={i === 1 ? 'end' : 'start'}>
              {name}
            </text>
          );
        })}
        <text x={10} y={20}>
          bush
        </text>
        <text x={WIDTH - 10} y={HEIGHT - 10} textAnchor="end">
          journal
        </text>
      </svg>
      <ol>
        {labels.map(({ name, text }, i) => (
          <li key={name} className={i === 2 ? 'the-film' : ''}>
            {name}: <strong>{text}</strong>
          </li>
        ))}
      </ol>
    </figure>
  );
}

function sidesOf(degrees: number) {
  const a = radians(degrees);
  return { sin: Math.sin(a), cos: Math.cos(a), tan: Math.tan(a) };
}

/** The little square where the film meets the side. */
function squareMark({ x, y }: { x: number; y: number }, degrees: number): string {
  const { sin, cos } = sidesOf(degrees);
  const [a, b] = [RIGHT_ANGLE * cos, RIGHT_ANGLE * sin];
  return `M${x + a} ${y - b}L${x + a - b} ${y - b - a}L${x - b} ${y - a}`;
}
