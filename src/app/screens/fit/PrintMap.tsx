/** One print unrolled: round the part along the page, its length up the page from the rear to the nose. */
import './print.css';
import { useEffect, useRef } from 'react';
import { placeText, type System } from '../../../design/units.ts';
import { millimetres } from '../../../report/convert.ts';
import type { PrintMap as PrintOf } from '../../../report/print/maps.ts';
import { BLUE, blueStrength } from '../../pictures/blue.ts';

interface Props {
  map: PrintOf;
  /** m */
  thickness: number;
  system: System;
  dark: boolean;
  /** lying as a section does: the nose on the right, round the part up the page */
  lying?: boolean;
}

type Colour = readonly [number, number, number];
const METAL: Record<PrintOf['part'], { light: Colour; dark: Colour }> = {
  journal: { light: [203, 211, 217], dark: [93, 108, 120] },
  bush: { light: [228, 205, 170], dark: [138, 98, 54] },
};
/** Where no other part comes near. */
const ALONE = 0.55;

export function PrintMap({ map, thickness, system, dark, lying = false }: Props) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const rows = map.stations.length;
  useEffect(() => {
    const context = canvas.current?.getContext('2d');
    if (!context) return;
    context.putImageData(imageOf(map, thickness, dark, lying), 0, 0);
  }, [map, thickness, dark, lying]);
  const place = (row: number) => placeText(millimetres(map.stations[row]!), system);
  return (
    <figure className="print">
      <figcaption>
        <span className="of">
          {map.seat} {map.part}
        </span>
        {!lying && <span>nose end, {place(rows - 1)}</span>}
      </figcaption>
      <canvas
        ref={canvas}
        width={lying ? rows : map.columns}
        height={lying ? map.columns : rows}
        role="img"
        aria-label={`Print on the ${map.seat} ${map.part}, unrolled`}
      />
      {lying ? (
        <p className="angles">
          <span>rear end, {place(0)}</span>
          <span>nose end, {place(rows - 1)}</span>
        </p>
      ) : (
        <>
          <p className="angles" aria-hidden="true">
            <span>0°</span>
            <span>90°</span>
            <span>180°</span>
            <span>270°</span>
            <span>360°</span>
          </p>
          <p className="rear-end">rear end, {place(0)}</p>
        </>
      )}
    </figure>
  );
}

/** Blue where the film is no more than the thickness, the fuller the closer; bare metal elsewhere. */
function imageOf({ film, columns, stations, part }: PrintOf, thickness: number, dark: boolean, lying: boolean) {
  const rows = stations.length;
  const image = lying ? new ImageData(rows, columns) : new ImageData(columns, rows);
  const theme = dark ? 'dark' : 'light';
  const metal = METAL[part][theme];
  const blue = BLUE[theme].map((part) => 255 * part);
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const gap = film[row * columns + column]!;
      const strength = blueStrength(gap, thickness);
      const at = 4 * (lying ? (columns - 1 - column) * rows + row : (rows - 1 - row) * columns + column);
      for (let k = 0; k < 3; k++) image.data[at + k] = metal[k]! + (blue[k]! - metal[k]!) * strength;
      image.data[at + 3] = gap === Number.POSITIVE_INFINITY ? 255 * ALONE : 255;
    }
  }
  return image;
}
