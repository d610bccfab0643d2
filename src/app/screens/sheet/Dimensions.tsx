/** Dimension lines, leaders and the symbols of cones, for the drawings of the Sheet. */
import { ARROW } from '../../pictures/dimensionRows.ts';
import { DASHED, FIGURE, HEAD, lettering, SLANTED, SMALL, THIN } from './ink.ts';
import { type PartLayout, type PlacedDiameter, type PlacedNote, SYMBOL } from './partLayout.ts';

const CLEAR = 4;
const PAST = 5;
const BARB = 2.6;

const n = (value: number) => value.toFixed(2);

function head(x: number, y: number, dx: number, dy: number): string {
  const [bx, by] = [x + ARROW * dx, y + ARROW * dy];
  return `M${n(x)} ${n(y)}L${n(bx - BARB * dy)} ${n(by + BARB * dx)}L${n(bx + BARB * dy)} ${n(by - BARB * dx)}Z`;
}

/** Stations from the datum, as running dimensions: an exact place stands in a frame, the datum is a ring. */
export function Stations({ layout, width }: { layout: PartLayout; width: (text: string, size: number) => number }) {
  const { stations, x, y, line, figures } = layout;
  const places = stations.map(({ z }) => x(z));
  const datum = stations.find(({ z }) => z === 0);
  const leftmost = Math.min(...places);
  const rightmost = Math.max(...places);
  return (
    <g data-stations="">
      <path {...THIN} d={`M${n(leftmost)} ${n(line)}H${n(rightmost)}`} />
      {stations.map(({ z, r, text, exact, assumed, figureAt }) => {
        const at = x(z);
        const long = width(text, FIGURE);
        const toward = z < 0 ? 1 : -1;
        return (
          <g key={`${text} ${exact}`}>
            <path
              {...THIN}
              d={`M${n(at)} ${n(y(r, -1) + (r === 0 ? 0 : CLEAR))}V${n(line + 4)}L${n(figureAt)} ${n(figures - 6)}V${n(figures - 1)}`}
            />
            {z !== 0 && <path {...HEAD} d={head(at, line, toward, 0)} />}
            <text
              {...lettering(FIGURE)}
              {...(assumed && SLANTED)}
              transform={`translate(${n(figureAt + FIGURE * 0.36)} ${n(figures + 2)}) rotate(-90)`}
              textAnchor="end"
            >
              {text}
            </text>
            {(exact || assumed) && (
              <rect
                {...(assumed ? DASHED : THIN)}
                x={n(figureAt - FIGURE / 2 - 2)}
                y={n(figures - 1)}
                width={FIGURE + 4}
                height={n(long + 6)}
              />
            )}
          </g>
        );
      })}
      {datum && <circle cx={n(x(0))} cy={n(line)} r={3.6} fill="#fff" stroke="#000" strokeWidth={1} />}
    </g>
  );
}

interface DiameterProps {
  placed: PlacedDiameter;
  outward: 1 | -1;
  width: (text: string, size: number) => number;
}

/** A diameter at an end of the part, to be read from the right. */
export function Diameter({ placed, outward, width }: DiameterProps) {
  const { low, high, line, within, from, to, start, figureAt, lines, assumed } = placed;
  const long = Math.max(...lines.map((text) => width(text, FIGURE))) + 8;
  const inward = within ? 1 : -1;
  const end = line + outward * PAST;
  return (
    <g>
      <path
        {...THIN}
        d={`M${n(start + outward * CLEAR)} ${n(low)}H${n(end)}M${n(start + outward * CLEAR)} ${n(high)}H${n(end)}M${n(line)} ${n(from)}V${n(to)}`}
      />
      <path {...HEAD} d={head(line, low, 0, inward) + head(line, high, 0, -inward)} />
      {assumed && (
        <rect
          {...DASHED}
          x={n(line - 5 - lines.length * (FIGURE + 2))}
          y={n(figureAt - long / 2)}
          width={lines.length * (FIGURE + 2) + 2}
          height={n(long)}
        />
      )}
      {lines.map((text, i) => (
        <text
          key={text}
          {...lettering(FIGURE)}
          {...(assumed && SLANTED)}
          transform={`translate(${n(line - 5 - (lines.length - 1 - i) * (FIGURE + 2))} ${n(figureAt)}) rotate(-90)`}
          textAnchor="middle"
        >
          {text}
        </text>
      ))}
    </g>
  );
}

/** Name, cone and angle of a seat on a leader to its line. */
export function ConeNote({
  note,
  layout,
  width,
}: Pick<DiameterProps, 'width'> & { note: PlacedNote; layout: PartLayout }) {
  const { x, lines, symbol, cone, hasSymbol, widens, angle, assumed, z, r } = note;
  const to = { x: layout.x(z), y: layout.y(r, 1) };
  const from = Math.min(Math.max(to.x, x + 4), x + Math.max(symbol, 30));
  return (
    <g>
      <path {...THIN} d={`M${n(from)} ${n(layout.notesEnd)}L${n(to.x)} ${n(to.y)}`} />
      <circle cx={n(to.x)} cy={n(to.y)} r={2.6} fill="#000" />
      <text {...lettering(FIGURE)} x={n(x)} y={18} fontWeight={700}>
        {lines[0]}
      </text>
      {hasSymbol && <TaperSymbol x={x + symbol + 4} y={13} widens={widens} />}
      {cone !== '' && (
        <text {...lettering(FIGURE)} x={n(x + symbol + (hasSymbol ? SYMBOL : 4))} y={18}>
          {cone}
        </text>
      )}
      {angle !== '' && (
        <text {...lettering(SMALL)} {...(assumed && SLANTED)} x={n(x)} y={36}>
          {lines[1]}
        </text>
      )}
      {angle !== '' && assumed && (
        <rect {...DASHED} x={n(x - 3)} y={36 - SMALL} width={n(width(lines[1], SMALL) + 6)} height={SMALL + 3} />
      )}
    </g>
  );
}

/**
 * The symbol of a taper: an isosceles triangle whose point shows the way in which the cone gets smaller.
 * @source ISO 3040, symbol for rate of taper (from memory)
 */
function TaperSymbol({ x, y, widens }: { x: number; y: number; widens: 1 | -1 }) {
  const [base, point] = widens === 1 ? [x + 16, x] : [x, x + 16];
  return <path {...THIN} strokeWidth={1} d={`M${n(point)} ${n(y)}L${n(base)} ${n(y - 5)}V${n(y + 5)}Z`} />;
}
