/** Two states of a job: their sections laid over each other, and a table of what differs. */
import { useMemo } from 'react';
import type { Design } from '../../../design/definition.ts';
import type { System } from '../../../design/units.ts';
import { useAngles } from '../../state/angles.ts';
import { differences } from './differences.ts';
import { Overlay } from './Overlay.tsx';

interface Named {
  name: string;
  design: Design;
}

export function Comparison({ before, after, system }: { before: Named; after: Named; system: System }) {
  const way = useAngles();
  const rows = useMemo(
    () => differences(before.design, after.design, system, way),
    [before.design, after.design, system, way],
  );
  if (rows.length === 0) return <p>Nothing differs.</p>;
  return (
    <>
      <Overlay before={before} after={after} system={system} />
      <div className="table">
        <table>
          <thead>
            <tr>
              <th scope="col">What differs</th>
              <th scope="col">{before.name}</th>
              <th scope="col">{after.name}</th>
              <th scope="col">by</th>
            </tr>
          </thead>
          <tbody>
            {rows.map(({ where, what, before: was, after: is, by }) => (
              <tr key={`${where} ${what}`}>
                <th scope="row">
                  {where !== '' && <span className="fine">{where}: </span>}
                  {what}
                </th>
                <td>{was}</td>
                <td>{is}</td>
                <td>{by}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </>
  );
}
