/** Setting the angle of every surface that is cut, each way with the error it leaves and whether the film stands it. */
import type { CSSProperties } from 'react';
import { angleText, fineText, type System } from '../../design/units.ts';
import type { CutReport } from '../../report/cut/definition.ts';
import { blocksText, errorText } from './angleTexts.ts';
import { readText } from './gaugeText.ts';
import { HollowFlank } from './HollowFlank.tsx';

/** Columns of figures. */
const FOUR = { '--columns': 4 } as CSSProperties;

type Setting = CutReport['settings'][number];
type Way = Setting['ways'][number];

const WAYS: Record<Way['way'], { name: string; what: string }> = {
  sineBar: { name: 'Sine bar', what: 'stack' },
  alongSlide: { name: 'Indicator on a parallel bar, along the slide set over', what: 'reads over the travel' },
  alongAxis: { name: 'Indicator on the cone, along the axis', what: 'reads over its length' },
  table: { name: 'Indicator at the edge of the table', what: 'table moves' },
  scale: { name: 'Scale of the table', what: 'along the arc' },
  tailstock: { name: 'Tailstock set over', what: 'by' },
};

export function Angles({ cut, system }: { cut: CutReport; system: System }) {
  if (cut.settings.length === 0) return null;
  return (
    <section aria-label="Setting the angle">
      <h2>Setting the angle</h2>
      {cut.settings.map((setting) => (
        <details key={`${setting.seat} ${setting.part}`} open={cut.settings.length < 3}>
          <summary>
            {setting.seat} {setting.part}: {angleText(setting.halfAngle)} half
            {setting.stands !== null && `; its film stands ${errorText(setting.stands)} of error`}
          </summary>
          <p>
            Blocks for a bar of {readText(setting.bar, system)}: {blocksText(setting, system)}. Dresser at {angleText(setting.dresser)} from the wheel’s axis, that lying along the work’s.
          </p>
          {setting.hollow && <HollowFlank setting={setting} hollow={setting.hollow} system={system} />}
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls sideways must be reachable by the keyboard */}
          <section className="table ways" aria-label={`Ways to set the ${setting.seat} ${setting.part}`} tabIndex={0}>
            <table className="stacked" style={FOUR}>
              <thead>
                <tr>
                  <th scope="col">Way</th>
                  <th scope="col">Set or read</th>
                  <th scope="col">Error it leaves</th>
                  <th scope="col">Of film</th>
                  <th scope="col">Will it do?</th>
                </tr>
              </thead>
              <tbody>
                {setting.ways.map(({ way, reading, error, film, enough }) => (
                  <tr key={way}>
                    <th scope="row">
                      {WAYS[way].name}, <small>{WAYS[way].what}</small>
                    </th>
                    <td>{readText(reading, system)}</td>
                    <td>{errorText(error)}</td>
                    <td>{fineText(film, system)}</td>
                    <td>{enough === null ? '—' : enough ? 'yes' : 'no'}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </section>
        </details>
      ))}
    </section>
  );
}
