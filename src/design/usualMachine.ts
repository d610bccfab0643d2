/**
 * What a shop's machine and its gauges are taken to be where the design does not say, metric and inch. mm.
 * @source practice
 */
import { INCH, type System, THOU } from './units.ts';

interface UsualMachine {
  /** of the cross-feed dial and of the axial one */
  division: number;
  axialDivision: number;
  /** cross feed of one pass */
  pass: number;
  /** sine bar, and the set its blocks are of */
  bar: number;
  blocks: string;
  /** travel over which an angle is read, and the least that the indicator tells */
  travel: number;
  indicator: number;
  scaleRadius: number;
  scaleReading: number;
  centres: number;
  toolHeight: number;
}

export const USUAL_MACHINE: Record<System, UsualMachine> = {
  metric: {
    division: 0.005,
    axialDivision: 0.01,
    pass: 0.005,
    bar: 100,
    blocks: 'M112',
    travel: 25,
    indicator: 0.001,
    scaleRadius: 300,
    scaleReading: 0.1,
    centres: 150,
    toolHeight: 0.05,
  },
  inch: {
    division: 0.0005 * INCH,
    axialDivision: THOU,
    pass: 0.0002 * INCH,
    bar: 5 * INCH,
    blocks: '81',
    travel: INCH,
    indicator: 0.0001 * INCH,
    scaleRadius: 12 * INCH,
    scaleReading: 0.005 * INCH,
    centres: 6 * INCH,
    toolHeight: 0.002 * INCH,
  },
};

/** mm: the most that may be cut off a surface or a face where the design does not say; 100 µm, or 4 thou. */
export const USUAL_LIMIT: Record<System, number> = { metric: 0.1, inch: 4 * THOU };
