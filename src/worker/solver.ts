/** What is worked out beside the screen: every section that takes longer than a frame. Runs in a worker. */
import { expose } from 'comlink';
import { cutSection } from '../report/cut/section.ts';
import { measureSection } from '../report/measure/section.ts';
import { playSection } from '../report/play/section.ts';
import { printMaps } from '../report/print/maps.ts';
import { printSection } from '../report/print/section.ts';
import { sayAlive } from './alive.ts';

const SOLVERS = {
  cut: cutSection,
  measure: measureSection,
  play: playSection,
  print: printSection,
  printMaps,
};

export type Solvers = typeof SOLVERS;

expose(SOLVERS);
sayAlive();
