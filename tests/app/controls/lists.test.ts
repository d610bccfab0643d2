/** A measured line and lobes as text: there and back, and told where a line is wrong. */
import { expect, test } from 'vitest';
import { lobesText, profileText, readLobes, readProfile } from '../../../src/app/controls/lists.ts';

test('a measured line there and back', () => {
  for (const system of ['metric', 'inch'] as const) {
    const read = readProfile(
      profileText(
        [
          [-26, 0.0004],
          [0, -0.00125],
        ],
        system,
      ),
      system,
    );
    if (!read.ok) expect.fail(read.message);
    expect(read.value.flat().map((mm) => +mm.toFixed(5))).toEqual([-26, 0.0004, 0, -0.00125]);
  }
  expect(readProfile('-10; 2\n\n 5 mm ; 1 tenth', 'metric')).toEqual({
    ok: true,
    value: [
      [-10, 0.002],
      [5, 0.00254],
    ],
  });
  expect(readProfile('', 'metric')).toEqual({ ok: true, value: [] });
});

test('lobes there and back, and the line that is wrong', () => {
  const lobes = [{ count: 3, amplitude: 0.0003, phase: 90 }];
  expect(readLobes(lobesText(lobes, 'metric'), 'metric')).toEqual({ ok: true, value: lobes });
  expect(readLobes('3; 0.3; 90\n4; -1; 0', 'metric')).toEqual({
    ok: false,
    message: 'line 2: found −1.00 µm; it must be at least 0.00 µm',
  });
  expect(readProfile('1; 2\n3 4', 'metric')).toMatchObject({
    ok: false,
    message: expect.stringMatching(/^line 2: found "3 4"/),
  });
});
