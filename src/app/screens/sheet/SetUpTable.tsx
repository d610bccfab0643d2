/**
 * How the angle of every surface that is cut is set: the way that is fine enough, others that are, those that are not,
 * and a box for what was read.
 */
import type { Design } from '../../../design/definition.ts';
import { blocksText, toolText } from '../../../design/tools.ts';
import { angleSaid, angleText, atLeastText, fineText, readingText, type System } from '../../../design/units.ts';
import { millimetres, radians } from '../../../report/convert.ts';
import type { CutReport } from '../../../report/cut/definition.ts';
import { toAngleTools } from '../../../report/cut/toCut.ts';
import type { TolerancedSurface } from '../../../report/sheet/tolerancedSurfaces.ts';
import { type Way, waysToSet } from '../../../report/sheet/waysToSet.ts';
import { useAngles } from '../../state/angles.ts';
import { errorText } from '../cut/angleTexts.ts';
import { angleZoneText } from './coneTexts.ts';

interface Props {
  design: Design;
  settings: CutReport['settings'];
  /** the drawing's, whose tolerance of the angle holds at the machine too */
  surfaces: readonly TolerancedSurface[];
  system: System;
}

type Setting = CutReport['settings'][number];

const NAMES: Record<Way['way'], string> = {
  sineBar: 'part on a sine bar',
  alongBar: 'slide run along a sine bar',
  alongSlide: 'indicator along the slide',
  alongAxis: 'indicator on the cone',
  table: 'indicator at the table',
  scale: 'scale of the table',
  tailstock: 'tailstock',
};

export function SetUpTable({ design, settings, surfaces, system }: Props) {
  const way = useAngles();
  if (settings.length === 0) return null;
  return (
    <table className="set-up-table">
      <thead>
        <tr>
          <th scope="col">Setting the angle</th>
          <th scope="col" className="what">
            Set it so
          </th>
          <th scope="col">Read</th>
        </tr>
      </thead>
      {settings.map((setting) => {
        const within =
          surfaces.find(({ seat, part }) => seat === setting.seat && part === setting.part)?.halfAngleTolerance ?? null;
        const { by, also, coarse } = waysToSet(setting);
        const names = (ways: readonly Way[]) => ways.map(({ way }) => NAMES[way]).join(', ');
        return (
          <tbody key={`${setting.seat} ${setting.part}`}>
            <tr>
              <th scope="row">
                <strong>
                  {setting.seat} {setting.part}: {angleSaid(setting.halfAngle, way)}
                </strong>
                <span>
                  {way === 'half' ? 'half angle' : `half angle ${angleText(setting.halfAngle)}`}
                  {within !== null &&
                    `, true to ±${angleZoneText(within)}, as drawn: half of what the film stands about the gauge plane`}
                </span>
                <span>dresser at {angleText(setting.dresser)}</span>
              </th>
              <td className="what">
                <strong>{wayText(by, setting, design, system)}</strong>
                <span>{leavesText(by, setting, within, system)}</span>
                {also.slice(0, TOLD).map((way) => (
                  <span key={way.way}>Or: {wayText(way, setting, design, system)}.</span>
                ))}
                {by.enough !== false && coarse.length > 0 && <span>Too coarse here: {names(coarse)}.</span>}
              </td>
              <td data-label="Read">
                <span className="read-box" />
              </td>
            </tr>
          </tbody>
        );
      })}
    </table>
  );
}

/** Further ways that are told in full. */
const TOLD = 2;

/** What the way may be wrong by; where that is too much, what would do. */
function leavesText({ enough, error, film }: Way, { needed }: Setting, within: number | null, system: System): string {
  const leaves = `${errorText(error)}, ${fineText(film, system)} of film`;
  if (enough !== false)
    return `May be wrong by ${leaves}${within !== null && error > within ? ', more than this part’s half of the tolerance: check it on the cone after the first pass' : ''}.`;
  return `Too coarse, though the finest there is: may be wrong by ${leaves}.${needed ? ` Needed: an indicator that tells ${fineText(needed.indicator, system)}, or a travel of ${atLeastText(needed.travel, system)}.` : ''}`;
}

/** One way with everything that is set or read. */
function wayText({ way, reading }: Way, setting: Setting, design: Design, system: System): string {
  const tools = toAngleTools(design.cut ?? { allow: [] });
  const size = (metres: number) => toolText(millimetres(metres), system);
  const read = readingText(reading, system);
  switch (way) {
    case 'sineBar':
      return `Part on a sine bar of ${toolText(setting.bar, system)}, blocks ${blocksText(setting.blocks ?? [], tools.blocks.system)}${missText(setting, system)}: cone levelled by the indicator`;
    case 'alongBar':
      return `Slide along a sine bar of ${toolText(setting.bar, system)} on blocks ${blocksText(setting.blocks ?? [], tools.blocks.system)}${missText(setting, system)}: indicator at nought over ${size(tools.travel)}`;
    case 'alongSlide':
      return `Indicator on a test bar true to the axis: ${read} in ${size(tools.travel)} along the slide set over`;
    case 'alongAxis':
      return `Indicator on the cone: ${read} in ${readingText(reading / Math.abs(Math.tan(radians(setting.halfAngle))), system)} along the axis`;
    case 'table':
      return `Indicator ${size(tools.scaleRadius)} from the table’s pivot: moves ${read}`;
    case 'scale':
      return `Scale of the table, ${size(tools.scaleRadius)} from its pivot: ${read} along the arc`;
    case 'tailstock':
      return `Tailstock set over ${read}, ${size(tools.centres)} between centres`;
  }
}

const missText = ({ blocksError }: Setting, system: System) =>
  blocksError === null || Math.abs(blocksError) < 1e-9 ? '' : ` (off by ${fineText(blocksError, system)})`;
