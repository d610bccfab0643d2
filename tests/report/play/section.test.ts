/**
 * The `play` and `print` sections: what they hold for every demo, in the units of the file, by the words of the format.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import type { Design } from '../../../src/design/definition.ts';
import { parseDesign } from '../../../src/design/parse.ts';
import { report as definition } from '../../../src/report/definition.ts';
import type { ContactReport } from '../../../src/report/play/definition.ts';
import { solve } from '../../../src/report/report.ts';
import { vertices } from '../../engine/bruteForce.ts';

const folder = new URL('../../../assets/designs/', import.meta.url);
const demos = readdirSync(folder).filter((name) => name.endsWith('.conepair.json'));
const rad = (degrees: number) => (degrees * Math.PI) / 180;

function designOf(file: string, change: (design: Design) => Design = (d) => d): Design {
  const parsed = parseDesign(readFileSync(new URL(file, folder), 'utf8'));
  if (!parsed.ok) throw new Error(parsed.errors[0]!.message);
  return change(parsed.design);
}

/** Force and moment of contacts on the journal, from the design and the report alone. */
function carried(design: Design, contacts: readonly ContactReport[]) {
  const sum = { x: 0, y: 0, z: 0, mx: 0, my: 0 };
  for (const { seat, station, angle, share } of contacts) {
    const { bush } = design.seats.find((s) => s.name === seat)!;
    const a = rad(bush.halfAngle);
    const line = vertices(bush, 'bush');
    const k = Math.max(
      1,
      line.findIndex(([z]) => z >= station - 1e-9),
    );
    const [[z0, r0], [z1, r1]] = [line[k - 1]!, line[k]!];
    const radius = r0 + ((r1 - r0) * (station - z0)) / (z1 - z0);
    const zn = station + radius * Math.tan(a);
    const [x, y] = [-share * Math.cos(a) * Math.cos(rad(angle)), -share * Math.cos(a) * Math.sin(rad(angle))];
    sum.x += x;
    sum.y += y;
    sum.z += share * Math.sin(a);
    sum.mx -= zn * y;
    sum.my += zn * x;
  }
  return sum;
}

describe.each(demos)('%s', (file) => {
  const design = designOf(file, (d) => ({ ...d, print: { thickness: 0.002 } }));
  const found = solve(design, file);
  const play = found.play!;

  test('is as the definition says and survives JSON', () => {
    expect(definition.safeParse(found).error?.issues ?? []).toEqual([]);
    expect(JSON.parse(JSON.stringify(found))).toEqual(found);
  });

  test('sits where the centred journal touches first, and its contacts carry 1 N', () => {
    expect(play.seated.status).toBe('solved');
    expect(Math.abs(play.seated.pose!.z - found.fit!.firstPosition!)).toBeLessThan(1e-9);
    expect(new Set(play.seated.contacts.map((c) => c.seat))).toEqual(new Set(found.fit!.together));
    const sum = carried(design, play.seated.contacts);
    expect(Math.abs(sum.z - 1)).toBeLessThan(1e-9);
    for (const part of [sum.x, sum.y]) expect(Math.abs(part)).toBeLessThan(1e-9);
    for (const moment of [sum.mx, sum.my]) expect(Math.abs(moment)).toBeLessThan(1e-7);
  });

  test('its shake is what the pose shows at the indicator, held by contacts that carry a pull of 1 N in x', () => {
    const { shake, indicator } = play;
    expect(shake.status).toBe('solved');
    const at = (pose: { x: number; tiltY: number }) => pose.x + pose.tiltY * indicator;
    expect(Math.abs(at(shake.pose!) - at(shake.back!.pose) - shake.total!)).toBeLessThan(1e-12);
    expect(shake.pose!.z).toBe(design.position ?? 0);
    const sum = carried(design, shake.contacts);
    expect(Math.abs(sum.x + 1)).toBeLessThan(1e-9);
    expect(Math.abs(sum.my + indicator)).toBeLessThan(1e-6);
  });

  test('the map is as wide as the shake, the curve passes through it and starts from the stop', () => {
    const across = play.map!.map(([x]) => x);
    expect(Math.max(...across) - Math.min(...across)).toBeCloseTo(play.shake.total!, 9);
    const positions = play.curve.map((p) => p.position);
    expect(positions[0]).toBeCloseTo(play.seated.pose!.z, 12);
    expect([...positions].sort((a, b) => a - b)).toEqual(positions);
    expect(play.curve[0]!.total).toBeCloseTo(play.shakeAgainst!.total!, 9);
  });

  test('end play agrees with the centred one, and only there is one where both ways are stopped', () => {
    if (found.fit!.endPlay === null) expect(play.endPlay).toBeNull();
    else expect(Math.abs(play.endPlay! - found.fit!.endPlay)).toBeLessThan(1e-9);
  });

  test('the print has both parts of every seat, and blue where it sits', () => {
    const { print } = found;
    expect(print!.status).toBe('solved');
    for (const shapes of [print!.press, print!.turned]) {
      expect(shapes.map((s) => `${s.seat} ${s.part}`)).toEqual(
        design.seats.flatMap((s) => [`${s.name} journal`, `${s.name} bush`]),
      );
      for (const name of found.fit!.together)
        expect(shapes.find((s) => s.seat === name && s.part === 'bush')!.covered).toBeGreaterThan(0.1);
    }
  });
});

describe('what the section takes from the design', () => {
  const demo = (change: (design: Design) => Design) =>
    solve(designOf('steep-first.conepair.json', change), 'f', ['play', 'print']);

  it('is left out without `play`, the print without `print`', () => {
    const bare = demo(({ play: _, print: __, ...rest }) => rest);
    expect(bare).toEqual({ conepair: 1, file: 'f', title: bare.title });
  });

  it('the indicator stands at the nose end of the journal, and all but the position is free, where nothing is said', () => {
    const play = demo((d) => ({ ...d, play: {} })).play!;
    expect(play.indicator).toBe(4.2);
    expect(play.free).toEqual(['x', 'y', 'tiltX', 'tiltY']);
  });

  it('only what is free moves', () => {
    const play = demo((d) => ({ ...d, play: { indicator: 30, free: ['x'] } })).play!;
    expect(play.shake.pose).toMatchObject({ y: 0, tiltX: 0, tiltY: 0 });
    expect(play.shake.total).toBeCloseTo(2 * roomSideways(), 9);
  });

  it('friction decides which seats hold, and what frees them', () => {
    const play = demo((d) => ({ ...d, friction: 0.04 })).play!;
    expect(play.selfHolding).toEqual([]);
    const usual = demo((d) => d).play!;
    expect(usual.selfHolding).toEqual(['shallow']);
    const tan = Math.tan(rad(3));
    expect(usual.freeing.shallow).toBeCloseTo((0.12 - tan) / (0.12 + tan), 12);
  });

  it('a position at which it does not fit, and one with nothing to hold it, are told apart', () => {
    const tight = demo((d) => ({ ...d, position: -0.01 })).play!;
    expect(tight.shake).toMatchObject({ status: 'infeasible', total: null, back: null, contacts: [] });
    expect(tight.shake.interference).toBeCloseTo(0.006 * Math.sin(rad(45)), 9);
    expect(tight.map).toBeNull();
    const straight = demo((d) => ({
      ...d,
      seats: [
        {
          name: 'plain',
          journal: { halfAngle: 0, diameter: 19.99, station: 0, from: -20, to: 0 },
          bush: { halfAngle: 0, diameter: 20, station: 0, from: -20, to: 0 },
        },
      ],
      print: { thickness: 0.002 },
    }));
    expect(straight.play!.seated).toMatchObject({ status: 'unbounded', pose: null, contacts: [], motion: { z: -1 } });
    expect(straight.play!.shakeAgainst).toBeNull();
    expect(straight.print).toMatchObject({ status: 'unbounded', press: [], turned: [] });
  });
});

/** How far (mm) the journal of steep-first can go straight to one side as it opens: the least of film over cosine. */
function roomSideways(): number {
  const design = designOf('steep-first.conepair.json');
  return Math.min(
    ...solve(design, 'f', ['fit']).fit!.seats.map(
      (s, i) => s.leastFilm! / Math.cos(rad(design.seats[i]!.bush.halfAngle)),
    ),
  );
}
