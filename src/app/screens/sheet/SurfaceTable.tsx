/** Every surface in figures, as the drawings dimension it. */
import type { Design } from '../../../design/definition.ts';
import { lengthUnit, type System } from '../../../design/units.ts';
import type { TolerancedSurface } from '../../../report/sheet/tolerancedSurfaces.ts';
import { angleToleranceText, coneShort, cutText } from './coneTexts.ts';
import { diameterText, endText, exactText, zoneText } from './figures.ts';
import { letterOf } from './PartDrawing.tsx';

interface Props {
  design: Design;
  surfaces: readonly TolerancedSurface[];
  /** whether the cuts are what trials left of a plan */
  left: boolean;
  system: System;
}

export function SurfaceTable({ design, surfaces, left, system }: Props) {
  const isCut = surfaces.some(({ cut }) => cut !== null);
  const zone = (width: number | null) => (width === null ? '—' : zoneText(width, system));
  return (
    <div className="wide">
      <table className="surfaces">
        <thead>
          <tr>
            <th scope="col">Surface, {lengthUnit(system).name}</th>
            <th scope="col">⌀ in the gauge plane</th>
            <th scope="col">Plane at</th>
            <th scope="col">From, to</th>
            <th scope="col">Half angle</th>
            <th scope="col">Form</th>
            <th scope="col">Run-out</th>
            {isCut && <th scope="col">⌀, {left ? 'most likely left' : 'by the plan'}</th>}
          </tr>
        </thead>
        <tbody>
          {surfaces.map((surface) => (
            <tr key={`${surface.seat} ${surface.part}`} className={surface.cut === null ? undefined : 'is-cut'}>
              <th scope="row">
                {letterOf(design, surface.seat)} {surface.seat} {surface.part}
                {surface.asMeasured && ' *'}
              </th>
              <td>{diameterText(surface.diameter, surface.diameterTolerance, system)}</td>
              <td>
                <span className="exact">{exactText(surface.gaugePlane, system)}</span>
              </td>
              <td>
                {endText(surface.from, system)}, {endText(surface.to, system)}
              </td>
              <td className="angle">
                {angleToleranceText(surface, system).replace('half angle ', '')} {coneShort(surface, system)}
              </td>
              <td>{zone(surface.form)}</td>
              <td>{zone(surface.runOut)}</td>
              {isCut && <td>{cutText(surface, system)}</td>}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
