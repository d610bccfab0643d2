/** Where marking blue prints on the bush of every seat, once the journal has gone home. */
import type { Design } from '../../../design/definition.ts';
import type { System } from '../../../design/units.ts';
import { Fault } from '../../frame/Fault.tsx';
import { useMedia } from '../../pictures/useMedia.ts';
import { useSolved } from '../../state/useSolved.ts';
import { PrintMap } from '../fit/PrintMap.tsx';

export function BluePrint({ design, system }: { design: Design; system: System }) {
  const dark = useMedia('(prefers-color-scheme: dark)');
  const { value: maps, fault, again } = useSolved('printMaps', design);
  return (
    <div className="blue-print">
      <p className="fine">
        {maps
          ? 'The blue on the bush, unrolled: it lies as the drawing does.'
          : fault
            ? ''
            : 'The blue is being printed.'}
      </p>
      <Fault what="The print" fault={fault} again={again} />
      {maps?.press
        .filter(({ part }) => part === 'bush')
        .map((map) => (
          <PrintMap key={map.seat} map={map} thickness={maps.thickness} system={system} dark={dark} lying />
        ))}
    </div>
  );
}
