/** The check list: what it holds, what comes before what, and a person's own order. */
import { describe, expect, it } from 'vitest';
import { orderOfWork, reordered } from '../../../src/engine/cutting/orderOfWork.ts';
import { planCut } from '../../../src/engine/cutting/plan.ts';
import { stepsOf } from '../../../src/engine/cutting/steps.ts';
import { allowAll, MM, pair, UM } from './pairs.ts';

const seats = pair(0.0164, 0.008);
const input = {
  seats,
  position: 0,
  allow: allowAll(seats, 0.2 * MM).map((a) => ({ ...a, cleanup: 2 * UM })),
  faces: [
    { name: 'spacer', part: 'bush' as const, seats: [1], moves: -1 as const, cleanup: 5 * UM, limit: 20 * UM, add: 0 },
  ],
};
const verdict = planCut(input);
if (verdict.status !== 'planned') throw new Error(verdict.status);
const steps = stepsOf(input, verdict.plan, {
  diameterDial: false,
  division: UM,
  axialDivision: UM,
  pass: UM,
  slide: null,
});
const items = orderOfWork(steps);
const ids = items.map(({ id }) => id);
const comesFirst = (a: string, b: string) => expect(ids.indexOf(a), `${a} before ${b}`).toBeLessThan(ids.indexOf(b));

describe('the usual order', () => {
  it('names every item once', () => {
    expect(new Set(ids).size).toBe(ids.length);
  });

  /** The item of a step: known by the surface or face it is about. */
  const of = (kind: string, i: number) => {
    const step = steps[i]!;
    return step.kind === 'face' ? `${kind} ${step.face}` : `${kind} ${step.seat} ${step.part}`;
  };

  it('starts with manual, guards and the wheel, and ends in the spindle’s own bearings', () => {
    expect(ids.slice(0, 3)).toEqual(['manual', 'guards', 'wheelTest']);
    expect(ids.at(-1)).toBe('noseTaper');
    expect(items[2]!.cautions).toEqual(['ringTest', 'wheelSpeed']);
  });

  it('holds, dresses and checks the height before it cuts, sparks out and gauges after', () => {
    for (const part of ['bush', 'journal'] as const) {
      const first = steps.findIndex((s) => s.kind === 'surface' && s.part === part);
      comesFirst(part === 'bush' ? 'bushHold' : 'centres', `oneSetting ${part}`);
      comesFirst(`oneSetting ${part}`, `dress ${part}`);
      comesFirst(`dress ${part}`, `height ${part}`);
      comesFirst(`height ${part}`, of('angle', first));
    }
    for (const [i, { kind }] of steps.entries()) {
      if (kind !== 'surface') continue;
      comesFirst(of('angle', i), of('cut', i));
      comesFirst(of('cut', i), of('sparkOut', i));
      comesFirst(of('sparkOut', i), of('gauge', i));
      if (i > 0 && steps[i - 1]!.kind === 'surface') comesFirst(of('gauge', i - 1), of('cut', i));
    }
  });

  it('grinds faces after the cones, stones, cleans and tries last of all', () => {
    comesFirst(of('gauge', steps.length - 2), of('face', steps.length - 1));
    comesFirst(of('face', steps.length - 1), 'stone');
    comesFirst('stone', 'clean');
    comesFirst('clean', 'trial');
  });

  it('where nothing may come off before a trial that is what there is to do first, and again last', () => {
    const first = orderOfWork(steps, true);
    expect(first.slice(0, 2).map(({ what }) => what)).toEqual(['cleanFirst', 'trialFirst']);
    expect(first.slice(2)).toEqual(items);
    expect(orderOfWork([], true)).toEqual([]);
  });

  it('every cut asks for eye protection', () => {
    for (const item of items) if (item.what === 'cut') expect(item.cautions).toContain('eyes');
  });

  it('is empty where nothing is cut; one surface needs no “at one setting”', () => {
    expect(orderOfWork([])).toEqual([]);
    expect(orderOfWork(steps.slice(-2, -1)).some(({ what }) => what === 'oneSetting')).toBe(false);
  });
});

it('a person’s own order comes first, nothing is lost, and names no longer there are passed over', () => {
  const own = reordered(items, ['trial', 'no such item', 'guards']);
  expect(own.slice(0, 2).map(({ id }) => id)).toEqual(['trial', 'guards']);
  expect(own.map(({ id }) => id).sort()).toEqual([...ids].sort());
});
