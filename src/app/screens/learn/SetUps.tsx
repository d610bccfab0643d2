/** The drawings of readings, as Measure has them. */
import type { Design } from '../../../design/definition.ts';
import type { System } from '../../../design/units.ts';
import { SetUp } from '../measure/SetUp.tsx';

export function SetUps({ design, which, system }: { design: Design; which: readonly number[]; system: System }) {
  const readings = which.flatMap((at) => design.readings?.[at] ?? []);
  return (
    <div className="set-ups">
      {readings.map((reading, i) => (
        <SetUp key={which[i]} design={design} reading={reading} system={system} />
      ))}
    </div>
  );
}
