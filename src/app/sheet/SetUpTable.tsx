/** How the angle of every surface that is cut is set: stack and blocks, indicator, table, dresser, and the error the film stands. */
import { angleText, type System } from '../../design/units.ts';
import type { CutReport } from '../../report/cut/definition.ts';
import { blocksText, errorText } from '../cut/angleTexts.ts';
import { readText } from '../cut/gaugeText.ts';

export function SetUpTable({ cut, system }: { cut: CutReport; system: System }) {
  const read = (setting: CutReport['settings'][number], way: string) => {
    const found = setting.ways.find((w) => w.way === way);
    return found ? `${readText(found.reading, system)}${found.enough === false ? ' (too coarse)' : ''}` : '—';
  };
  return (
    <table className="set-up-table">
      <thead>
        <tr>
          <th scope="col">Surface</th>
          <th scope="col">Half angle</th>
          <th scope="col">Stands</th>
          <th scope="col">Sine bar, stack</th>
          <th scope="col">Along the slide</th>
          <th scope="col">Edge of the table</th>
          <th scope="col">Tailstock</th>
        </tr>
      </thead>
      {cut.settings.map((setting) => (
        <tbody key={`${setting.seat} ${setting.part}`}>
          <tr>
            <th scope="row" rowSpan={2}>
              {setting.seat} {setting.part}
            </th>
            <td>{angleText(setting.halfAngle)}</td>
            <td>{setting.stands === null ? '—' : errorText(setting.stands)}</td>
            <td>{read(setting, 'sineBar')}</td>
            <td>{read(setting, 'alongSlide')}</td>
            <td>{read(setting, 'table')}</td>
            <td>{read(setting, 'tailstock')}</td>
          </tr>
          <tr>
            <td colSpan={6} className="what">
              Bar {readText(setting.bar, system)}, blocks {blocksText(setting, system)}; dresser {angleText(setting.dresser)} from the wheel’s axis.
            </td>
          </tr>
        </tbody>
      ))}
    </table>
  );
}
