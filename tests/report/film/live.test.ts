/** What is said while the hand moves does not turn once the full answer is there. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { Design } from '../../../src/design/definition.ts';
import { parseDesign } from '../../../src/design/parse.ts';
import { FINE, QUICK } from '../../../src/engine/run/running.ts';
import { followFields, type RunFields } from '../../../src/report/film/fields.ts';
import { LIVE_DOUBT, liveVerdict } from '../../../src/report/film/liveVerdict.ts';
import { neededFilm } from '../../../src/report/film/neededFilm.ts';
import type { Run } from '../../../src/report/film/toSpindle.ts';

type Running = Design & { run: Run };
const folder = join(import.meta.dirname, '../../../assets/designs');
const running = readdirSync(folder).flatMap((file) => {
  const read = parseDesign(readFileSync(join(folder, file), 'utf8'));
  if (!read.ok) throw new Error(file);
  return read.design.run?.load ? [[file, read.design as Running] as const] : [];
});
const withLoad = (design: Running, times: number): Running => {
  const { x = 0, y = 0, z = 0, ...rest } = design.run.load!;
  return { ...design, run: { ...design.run, load: { ...rest, x: x * times, y: y * times, z: z * times } } };
};
const least = (fields: RunFields) => Math.min(...fields.seats.map(({ leastFilm }) => leastFilm));

test.each(running)(
  '%s, lightly and heavily loaded: the quick film is off by no more than is allowed for',
  (_, design) => {
    for (const times of [1, 10]) {
      const loaded = withLoad(design, times);
      const [quick, full] = [QUICK, FINE].map((size) => followFields(size).fields(loaded)!) as [RunFields, RunFields];
      expect(quick.status).toBe(full.status);
      if (full.status === 'contact') continue;
      expect(Math.abs(least(quick) / least(full) - 1), `${times} times the load`).toBeLessThan(LIVE_DOUBT);
    }
  },
);

test('a film near a limit is not judged before it is known; elsewhere the words are those of the full answer', () => {
  const [, design] = running.find(([file]) => file.startsWith('correct'))!;
  const fields = followFields(QUICK).fields(design)!;
  const need = neededFilm(design.run);
  const told = (share: number) => {
    const seats = fields.seats.map((seat) => ({ ...seat, leastFilm: share * need }));
    const { tone, headline } = liveVerdict(design, { ...fields, seats }, 'metric');
    return `${tone}: ${headline}`;
  };
  expect(told(1.2)).toMatch(/^good: Cold, the thinnest film is about /);
  for (const near of [1.09, 1, 0.91]) expect(told(near)).toMatch(/^mend: .*whether it parts .* is being worked out\.$/);
  expect(told(0.8)).toMatch(/^mend: .*it barely parts the surfaces\.$/);
  expect(told(0.4)).toMatch(/^mend: .*it barely parts the surfaces\.$/);
  for (const near of [0.36, 1 / 3, 0.31]) expect(told(near)).toMatch(/^mend: .*whether metal runs on metal is being/);
  expect(told(0.25)).toMatch(/^stop: .*thinner than the surfaces are rough: metal runs on metal\.$/);
});
