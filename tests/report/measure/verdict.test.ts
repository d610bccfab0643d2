/** What the readings say in words: what it must say of every kind of notebook, and what it must not. */

import { describe, expect, test } from 'vitest';
import type { Design } from '../../../src/design/definition.ts';
import { measureSection } from '../../../src/report/measure/section.ts';
import { doubtsOf, measureVerdict } from '../../../src/report/measure/verdict.ts';
import { fitMeasured } from '../../../src/report/measure/withMeasured.ts';
import { exactly, keeping, notebookDemo } from './notebooks.ts';

function say(design: Design, system: 'metric' | 'inch' = 'metric') {
  const { tone, headline, sentences } = measureVerdict(
    design,
    measureSection(design)!,
    fitMeasured(design, measureSection(design)!),
    system,
  );
  for (const sentence of [headline, ...sentences]) expect(sentence).toMatch(/^[A-Z].*[.]$/);
  return { tone, headline, text: [headline, ...sentences].join(' ') };
}

const slip = (index: number, by: number) =>
  notebookDemo((d) => ({
    ...d,
    readings: d.readings!.map((r, i) => (i === index ? { ...r, value: r.value + by } : r)),
  }));

/** Two balls and a sine bar in the steep bush, the sine bar misread. */
const steepBushOnly = (d: Design): NonNullable<Design['readings']> =>
  d.readings!.slice(11, 14).map((r) => (r.kind === 'sineRise' ? { ...r, value: r.value + SLIP } : r));
const SLIP = -0.2;

test('a whole notebook: the relation, how sure, and against the tolerances', () => {
  const { tone, headline, text } = say(notebookDemo());
  expect(tone).toBe('mend');
  expect(headline).toMatch(
    /^The shallow and steep cones stand 33\.8\d µm wrong to each other, give or take 8\.0\d µm \(19 times in 20\)\.$/,
  );
  expect(text).toMatch(/beyond the 10\.27 µm the tolerances of the films allow/);
  expect(text).toMatch(/The steep seat touches first\./);
  expect(text).not.toMatch(/cannot be used|leave open|Read it again|contradict/);
  expect(say(notebookDemo(), 'inch').headline).toMatch(
    /stand 13\.3\d? tenths wrong to each other, give or take 3\.1\d? tenths/,
  );
});

test('parts that are as they should be: good, or not yet sure', () => {
  const fine = exactly(notebookDemo());
  const scaled = (factor: number): Design => ({
    ...fine,
    readings: fine.readings!.map((r) => ({ ...r, sigma: factor * r.sigma })),
  });
  expect(say(scaled(3))).toMatchObject({ tone: 'mend' });
  expect(say(scaled(3)).text).toMatch(
    /Whether that is within the 10\.26 µm the tolerances of the films allow the readings do not yet tell\./,
  );
  expect(say(scaled(0.25))).toMatchObject({ tone: 'good' });
  expect(say(scaled(0.25)).text).toMatch(/That is within the 10\.26 µm/);
});

test('cones that touch together: which is first is told by its chances', () => {
  // the drawn pair has both films at one position, so the shallow seat touches rearward of the steep one; move the
  // steep bush
  const tied = exactly(
    notebookDemo((d) => ({
      ...d,
      seats: d.seats.map((s) =>
        s.name === 'steep' ? { ...s, bush: { ...s.bush, diameter: s.bush.diameter + 0.0881 } } : s,
      ),
    })),
  );
  expect(say(tied).text).toMatch(
    /Which seat touches first is not sure: the \w+ one in \d+ cases of 100, the \w+ one in \d+\./,
  );
});

describe('what is wrong', () => {
  test('a slip is pointed out by its place in the notebook', () => {
    const slipped = notebookDemo((d) => ({
      ...d,
      readings: d.readings!.map((r, i) => (i === 4 ? { ...r, value: r.value + 0.05 } : r)),
    }));
    const { tone, text } = say(slipped);
    expect(tone).toBe('stop');
    expect(text).toMatch(
      /Reading 5 \(ball, shallow bush\) \(15\.4808 mm\) does not go with the others: it lies \d+\.\d+ µm off, \d+(\.\d)? times its uncertainty\. Read it again\./,
    );
  });

  test('two that only contradict each other', () => {
    const on = { kind: 'diameter', seat: 'shallow', part: 'journal', station: 0, sigma: 0.001 } as const;
    const { tone, text } = say(
      notebookDemo((d) => ({
        ...d,
        readings: [
          { ...on, value: 18 },
          { ...on, value: 18.02 },
        ],
      })),
    );
    expect(tone).toBe('stop');
    expect(text).toMatch(
      /contradict each other, and nothing tells which is wrong: reading 1 \(diameter, shallow journal\) or reading 2/,
    );
  });

  test('how far one lies off is told in lengths and in its own uncertainty, and both are right', () => {
    const design = slip(8, 0.05);
    const { readings } = measureSection(design)!;
    const off = Math.abs(readings[8]!.residual) * 1000;
    const [, said, times] = /it lies ([\d.]+) µm off, (\d+(?:\.\d)?) times its uncertainty/.exec(say(design).headline)!;
    expect(Math.abs(Number(said) - off)).toBeLessThan(0.06);
    expect(Math.abs(Number(times) - off)).toBeLessThan(0.51);
  });

  test('a reading that only the drawn parts allow is not dropped without a word: it, and those against it, are named', () => {
    // a sine bar under the steep bush read 0.05 mm too low turns it so far that the second ball would rest on the edge
    const design = notebookDemo((d) => ({ ...d, readings: steepBushOnly(d) }));
    const measure = measureSection(design)!;
    expect(measure.impossible).toMatchObject([{ possibleAsDrawn: true }]);
    expect(measure.disagreeing.map(({ index }) => index)).toContain(2);
    expect(measure.disagreeing.length).toBeLessThanOrEqual(3);
    const { tone, headline, text } = say(design);
    expect(tone).toBe('stop');
    expect(headline).toMatch(
      /contradict each other, and nothing tells which is wrong: .*reading 3 \(sine bar, steep bush\)/,
    );
    expect(text).toMatch(/cannot be used at the shape the others tell: .*\. On the parts as drawn it could\./);
    expect(text).not.toMatch(/No reading checks another/);
    expect(doubtsOf(design, measure).join(' ')).toMatch(/contradict each other/);
  });

  test('uncertainties stated too small all over', () => {
    const { text, tone } = say(
      notebookDemo((d) => ({ ...d, readings: d.readings!.map((r) => ({ ...r, sigma: r.sigma / 1.5 })) })),
    );
    expect(tone).toBe('stop');
    expect(text).toMatch(/scatter more than their uncertainties allow/);
  });

  test('an impossible reading, in the units wanted', () => {
    const ball = (d: Design): Design => ({
      ...d,
      readings: [
        ...d.readings!,
        { kind: 'ballDepth', seat: 'shallow', part: 'bush', ball: 12.7, face: 0, value: 3, sigma: 0.001 },
      ],
    });
    expect(say(notebookDemo(ball)).text).toMatch(
      /Reading 17 \(ball, shallow bush\) cannot be used: the ball of 12\.7 mm is too small: it falls through/,
    );
    expect(say(notebookDemo(ball), 'inch').text).toMatch(/the ball of 1\/2 in is too small/);
    expect(say(notebookDemo(ball)).tone).toBe('stop');
  });

  test('nothing usable', () => {
    const { headline, tone, text } = say(
      notebookDemo((d) => ({
        ...d,
        readings: [
          { kind: 'sineRise', seat: 'steep', part: 'bush', bar: 100, stack: 120, travel: 2, value: 0, sigma: 0.001 },
        ],
      })),
    );
    expect(headline).toBe('None of the readings can be used.');
    expect(tone).toBe('stop');
    expect(text).toMatch(
      /the stack of 120\.000 mm is as long as the sine bar of 100 mm or longer: the bar would stand upright/,
    );
  });
});

describe('what speaks against taking the shapes', () => {
  test('surfaces that nothing was read of, and what is left open', () => {
    const half = keeping(notebookDemo(), (r) => 'seat' in r && r.seat === 'shallow');
    expect(doubts(half)).toEqual(['Nothing was read of the steep journal and steep bush; they stay as drawn.']);
    expect(say(half).text).toMatch(
      /Nothing was read of the steep journal and steep bush: what is told of them is the drawing\./,
    );
    expect(doubts(keeping(notebookDemo(), (_, i) => i === 4)).join(' ')).toMatch(
      /What the readings leave open stays as drawn/,
    );
  });

  const doubts = (design: Design) => doubtsOf(design, measureSection(design)!);

  test('nothing where the readings agree', () => {
    expect(doubts(notebookDemo())).toEqual([]);
    expect(doubts(exactly(notebookDemo()))).toEqual([]);
  });

  test('a slip of the pen, by its number', () => {
    expect(doubts(slip(4, 0.05)).join(' ')).toMatch(/Reading 5 does not go with the others and bends these shapes/);
  });

  test('a slip so great that the estimate does not come to rest is still named first', () => {
    const { headline, text, tone } = say(slip(0, 0.1));
    expect(tone).toBe('stop');
    expect(headline).toMatch(/^Reading 1 \(rolls, shallow journal\) .* does not go with the others/);
    expect(text).toMatch(/shallow/);
  });

  test('scatter beyond what is stated, and a reading left out', () => {
    expect(
      doubts(notebookDemo((d) => ({ ...d, readings: d.readings!.map((r) => ({ ...r, sigma: r.sigma / 1.5 })) }))).join(
        ' ',
      ),
    ).toMatch(/scatter more|does not go/);
    const ball = notebookDemo((d) => ({
      ...d,
      readings: [
        ...d.readings!,
        { kind: 'ballDepth', seat: 'shallow', part: 'bush', ball: 5, face: 0, value: 3, sigma: 0.001 },
      ],
    }));
    expect(doubts(ball)).toEqual(['A reading that cannot be used is left out.']);
  });
});

describe('what is open', () => {
  test('one reading: what it leaves open, and what would settle it', () => {
    const { headline, text, tone } = say(keeping(notebookDemo(), (_, i) => i === 4));
    expect(tone).toBe('mend');
    expect(headline).toBe('The readings do not yet tell how the shallow and steep cones stand to each other.');
    expect(text).toMatch(
      /leave open the diameter of the shallow bush and the half angle of the shallow bush; nothing is made up for them\./,
    );
    expect(text).toMatch(/A ball of [\d.]+ mm resting in the shallow bush would settle/);
    expect(text).toMatch(/No reading checks another/);
    expect(text).toMatch(/To tell the relation of the cones, begin with/);
  });

  test('one seat only: no relation is spoken of', () => {
    const single = keeping(
      notebookDemo((d) => ({ ...d, seats: d.seats.slice(0, 1) })),
      (r) => 'seat' in r && r.seat === 'shallow',
    );
    const { headline, tone } = say(single);
    expect(headline).toMatch(/^The journal touches first at [−\d.]+ µm, give or take/);
    expect(tone).toBe('good');
  });

  test('one surface of a pair without films', () => {
    const bare = keeping(
      notebookDemo((d) => ({ ...d, seats: d.seats.map(({ film: _, ...seat }) => seat) })),
      (_, i) => i < 4,
    );
    expect(say(bare).headline).toMatch(
      /^The shallow journal has a half angle of 3\.00\d*° and a diameter of 17\.99\d+ mm\.$/,
    );
  });
});

test('a slip that is likely is named, with how likely, in the units of the person', () => {
  const slipped = notebookDemo((d) => ({
    ...d,
    readings: d.readings!.map((r, i) => (i === 0 && r.kind === 'overRolls' ? { ...r, roll: r.roll + 1 } : r)),
  }));
  expect(say(slipped).text).toMatch(
    /A roll of \d mm is typed: was it one of \d mm\? Then all would agree \((almost surely|.* times in .*)\)\. Look, or read it again\./,
  );
});
