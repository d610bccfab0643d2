/**
 * Every sentence of every verdict, the Sheet and the tables of figures, for a person who says angles otherwise than as
 * half angles: none is told so, but where it is said to be one.
 *
 * @module-tag long
 */
import { renderToStaticMarkup } from 'react-dom/server';
import { afterAll, describe, expect, test, vi } from 'vitest';
import type { Design } from '../../src/design/definition.ts';
import { angleFigure, angleText } from '../../src/design/units.ts';

const kept = vi.hoisted(() => {
  const told = { way: 'included' };
  // What is drawn without a page goes by the way that was kept on the device.
  vi.stubGlobal('localStorage', { getItem: () => told.way, setItem: () => {} });
  // The width of lettering is asked of a canvas, which there is none of here.
  vi.stubGlobal('document', { createElement: () => ({ getContext: () => null }) });
  return told;
});
afterAll(() => void vi.unstubAllGlobals());
vi.setConfig({ testTimeout: 60_000 });

/** The screens anew, as they are for a person of this way. */
async function shownIn(way: string) {
  kept.way = way;
  vi.resetModules();
  const [told, { Told }, { Angles }, { BeforeAfter }, { differences }, section, states, { cutSection }] =
    await Promise.all([
      import('./told.tsx'),
      import('../../src/app/screens/measure/Told.tsx'),
      import('../../src/app/screens/cut/Angles.tsx'),
      import('../../src/app/record/BeforeAfter.tsx'),
      import('../../src/app/screens/jobs/differences.ts'),
      import('../../src/report/measure/section.ts'),
      import('../../src/report/record/states.ts'),
      import('../../src/report/cut/section.ts'),
    ]);
  const tables = (design: Design) =>
    renderToStaticMarkup(
      <>
        <Told design={design} measure={section.measureSection(design, 'metric')!} system="metric" />
        <Angles cut={cutSection(design)!} blocks="metric" system="metric" />
        <BeforeAfter design={design} states={states.statesOf(design)} system="metric" />
      </>,
    ).replace(/<[^>]*>/g, ' ');
  return { ...told, tables, differences };
}

/** Half angles of the design told as such, and not said to be. */
function bare(text: string, { seats }: Design): string[] {
  const figures = new Set(
    seats.flatMap(({ journal, bush }) => [journal, bush].map(({ halfAngle }) => angleText(Math.abs(halfAngle)))),
  );
  figures.delete(angleText(0));
  return [...figures].flatMap((figure) =>
    [...text.matchAll(new RegExp(`.{0,30}(?<![\\d.])${figure.replace('.', '\\.')}.{0,20}`, 'g'))]
      .map(([found]) => found)
      .filter((found) => !/half angle [\d.]+°|dresser at|Dresser at|° (half|of the adjuster|incl)/.test(found)),
  );
}

describe.each(['included', 'foot', 'ratio'] as const)('%s', (way) => {
  test('no half angle stands for itself', async () => {
    const { demos, verdictsOf, sheetOf, tables, differences } = await shownIn(way);
    const own = demos.filter(([name]) => ['steep-first', 'rear-bearing'].includes(name));
    expect(own).toHaveLength(2);
    for (const [, demo] of own) {
      // Half angles that are twice none of the others.
      const design: Design = {
        ...demo,
        seats: demo.seats.map((seat) => {
          const turned = (of: number) => (of === 0 ? 0 : of > 20 ? 43.5 : 3.25);
          const part = (surface: typeof seat.journal) => ({ ...surface, halfAngle: turned(surface.halfAngle) });
          return { ...seat, journal: part(seat.journal), bush: part(seat.bush) };
        }),
      };
      const said = [
        ...verdictsOf(design, 'metric', { way, running: false }),
        sheetOf(design, 'metric', { way, running: false }),
        tables(design),
      ].join(' \n ');
      expect(said).toContain(angleFigure(3.25, way));
      expect(bare(said, design)).toEqual([]);
      const [row] = differences(demo, design, 'metric', way).filter(({ what }) => /angle|taper/i.test(what));
      expect(row!.what).not.toMatch(/half/i);
      expect(bare(`${row!.before} ${row!.after}`, design)).toEqual([]);
    }
  });
});

test('said as half angles they stand as they are', async () => {
  const { demos, tables } = await shownIn('half');
  const [, demo] = demos.find(([name]) => name === 'steep-first')!;
  expect(bare(tables(demo), demo).length).toBeGreaterThan(0);
});
