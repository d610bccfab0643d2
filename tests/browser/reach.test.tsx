/**
 * Every field of the design can be reached from a screen: the leaves of the definition on one side, what the screens
 * offer for designs that hold everything on the other. A new field without a control fails here.
 *
 * @module-tag long
 */
import { expect, test } from 'vitest';
import { page as browser } from 'vitest/browser';
import { SCREENS } from '../../src/app/screens/index.ts';
import { DEMOS } from '../../src/app/state/demos.ts';
import { type Design, design as definition } from '../../src/design/definition.ts';
import { frame, page } from './page.tsx';

const shown = page('', true);

interface Node {
  def: {
    type: string;
    innerType?: Node;
    shape?: Record<string, Node>;
    element?: Node;
    items?: Node[];
    options?: Node[];
  };
}

/** Every leaf of the definition; lists as []. */
function leavesOf(node: Node, path = ''): string[] {
  const { type, innerType, shape, element, items, options } = node.def;
  if (type === 'optional') return leavesOf(innerType!, path);
  if (shape)
    return Object.entries(shape).flatMap(([key, inner]) => leavesOf(inner, path === '' ? key : `${path}.${key}`));
  if (element) return leavesOf(element, `${path}[]`);
  if (items) return items.flatMap((inner) => leavesOf(inner, `${path}[]`));
  if (options) return options.flatMap((option) => leavesOf(option, path));
  return [path];
}
const leaves = [...new Set(leavesOf(definition as unknown as Node))];

/** What is no person's to write, or has no screen yet. */
const NOT_REACHED: Record<string, string> = {
  $schema: 'the file says itself where its schema is',
  conepair: 'the version of the format',
  'assumed[]': 'a field that is typed, or told to be so, is off the list',
  'record[].after': 'follows from the trials written down before it',
  'record[].photograph': 'is taken in from a picture, where the device keeps jobs',
  'cut.trials[].inShapes': 'follows from taking the plan as done',
  'cut.trials[].taken[].safe': 'is what was told before it, written down with it',
  'cut.trials[].faces[].safe': 'likewise',
  'cut.trials[].taken[].renewed': 'follows from the line the plan renews',
};

const button = (name: RegExp) => () =>
  [...document.querySelectorAll('button')].some(({ textContent }) => name.test(textContent!));
const label = (name: RegExp) => () =>
  [...document.querySelectorAll('label, legend')].some(({ textContent }) => name.test(textContent!.trim()));

const within = (form: string) => (name: RegExp) => () =>
  [...document.querySelectorAll(`${form} label`)].some(({ textContent }) => name.test(textContent!.trim()));
const inTrial = within('.trial-form');
const inNote = within('.new-note');

/** Forms and lists that are more than a field for a place: on which screen, and what is there to be found. */
const BY_FORM: Record<string, [screen: string, there: () => boolean]> = {
  'readings[].kind': ['Measure', button(/^\+ Ball depth/)],
  'priors[].seat': ['Measure', label(/^shallow journal, half angle ±/)],
  'priors[].part': ['Measure', label(/^steep bush, half angle ±/)],
  'priors[].of': ['Measure', label(/^steep bush, diameter ±/)],
  'priors[].sigma': ['Measure', label(/^steep bush, diameter ±/)],
  'cut.allow[].seat': ['Cut', label(/^steep journal$/)],
  'cut.allow[].part': ['Cut', label(/^steep bush$/)],
  'cut.faces[].seats[]': ['Cut', label(/^seats it moves$/)],
  'cut.prefer.aim': ['Cut', label(/^What to aim at/)],
  'cut.work.done[]': ['Cut', label(/Read the machine/)],
  'cut.work.order[]': ['Cut', () => document.querySelector('[aria-label^="Later: "]') !== null],
  'cut.trials[].note': ['Cut', label(/^Note$/)],
  'cut.trials[].date': ['Cut', inTrial(/^Date$/)],
  'cut.trials[].by': ['Cut', inTrial(/^By$/)],
  'cut.trials[].stage': ['Cut', inTrial(/^Stage$/)],
  'record[].note': ['Measure', label(/^A note$/)],
  'record[].date': ['Measure', inNote(/^Date$/)],
  'record[].by': ['Measure', inNote(/^By$/)],
  'record[].stage': ['Measure', inNote(/^Stage$/)],
  'cut.trials[].taken[].seat': ['Cut', label(/^Off the steep journal$/)],
  'cut.trials[].taken[].part': ['Cut', label(/^Off the steep journal$/)],
  'cut.trials[].taken[].normal': ['Cut', label(/^Off the steep journal$/)],
  'cut.trials[].taken[].sigma': ['Cut', label(/^Off the steep journal, known to$/)],
  'cut.trials[].faces[].name': ['Cut', label(/^Off collar$/)],
  'cut.trials[].faces[].off': ['Cut', label(/^Off collar$/)],
  'cut.trials[].faces[].sigma': ['Cut', label(/^Off collar, known to$/)],
  'cut.trials[].standOff.value': ['Cut', label(/^Stand-off$/)],
  'cut.trials[].standOff.sigma': ['Cut', label(/^Stand-off known to$/)],
  'cut.trials[].shake.value': ['Cut', label(/^Shake$/)],
  'cut.trials[].shake.sigma': ['Cut', label(/^Shake known to$/)],
  'cut.trials[].shake.indicator': ['Cut', label(/^Indicator at station$/)],
  'cut.trials[].shake.position': ['Cut', label(/^Journal held at$/)],
  'cut.trials[].shake.direction': ['Cut', label(/^Pulled toward$/)],
  'cut.trials[].blue[].seat': ['Cut', label(/^steepnot looked at/)],
  'cut.trials[].blue[].prints': ['Cut', label(/^steepnot looked at/)],
};

const demo = DEMOS.find(({ file }) => file.startsWith('steep-first'))!.design;
const on = { seat: 'steep', part: 'journal', sigma: 0.001 } as const;

/** A pair that holds an entry of every kind. */
const full: Design = {
  ...demo,
  readings: [
    { kind: 'diameter', ...on, value: 24, station: 1.2 },
    { kind: 'overRolls', ...on, value: 30, roll: 1, station: 2 },
    { kind: 'ballDepth', ...on, part: 'bush', value: 1, ball: 25, face: 4 },
    { kind: 'sineRise', ...on, value: 0.001, bar: 100, stack: 70, travel: 2 },
    { kind: 'straightness', ...on, value: 0.001, station: 2 },
    { kind: 'standOff', value: 0, sigma: 0.001, after: 1 },
    { kind: 'shake', value: 0.01, sigma: 0.001, indicator: 30, position: 0, direction: 0 },
  ],
  run: {
    speed: 600,
    oil: { grade: 10 },
    load: { y: -40, z: -10, station: 30 },
    loads: [{ y: -5, station: -60 }],
    supply: [{ seat: 'shallow', angle: 90, from: -20, to: -5, width: 2, pressure: 0 }],
  },
  cut: {
    allow: [
      { seat: 'steep', part: 'journal', limit: 0.1, renew: true },
      { seat: 'shallow', part: 'journal', limit: 0.1 },
    ],
    faces: [{ name: 'collar', part: 'bush', seats: ['steep'], moves: 'noseward' }],
    trials: [{ taken: [{ seat: 'steep', part: 'journal', normal: 0.001 }], faces: [{ name: 'collar', off: 0.001 }] }],
    lap: { force: 20 },
  },
  odds: {
    draws: 1000,
    accuracy: 0.02,
    spread: [{ seat: 'steep', part: 'bush', of: 'diameter', sigma: 0.0005 }],
    processes: [{ name: 'ground here', spread: [{ seat: 'steep', part: 'bush', of: 'diameter', sigma: 0.001 }] }],
  },
};
const oil = (oil: NonNullable<Design['run']>['oil']): Design => ({ ...full, run: { ...full.run!, oil } });
const LOOKED_AT: [screen: string, design: Design][] = [
  ...SCREENS.map(({ name }): [string, Design] => [name, full]),
  // Where readings tell of other parts than are drawn there is no plan to aim.
  ['Cut', { ...full, readings: [], priors: [] }],
  ['Run', { ...oil({ viscosity: 0.01 }), run: { speed: 600, oil: { viscosity: 0.01 }, pose: { x: 0.0005 } } }],
  [
    'Run',
    oil({
      measured: [
        [40, 10],
        [100, 2.7],
      ],
    }),
  ],
];

const generic = (path: string) => path.replace(/\[\d+\]/g, '[]');
/** The rows of a group of controls come a moment after the group. */
const allFilled = () =>
  [...document.querySelectorAll('fieldset.group')].every((group) => group.querySelector('[data-path], input, select'));

/** Controls come after the picture, and some when their part is opened. */
async function offered(screen: string): Promise<Set<string>> {
  let before = -1;
  let found = new Set<string>();
  await expect
    .poll(
      async () => {
        for (const details of document.querySelectorAll('details')) details.open = true;
        await frame();
        found = new Set(
          [...document.querySelectorAll<HTMLElement>('[data-path]')].map((e) => generic(e.dataset.path!)),
        );
        const current = document.querySelector('[aria-current="page"]')?.textContent;
        const standing = current === screen && !/loading|being worked out\./i.test(document.body.textContent!);
        const settled = standing && found.size === before && allFilled();
        // What was counted while it loaded says nothing.
        before = standing ? found.size : -1;
        return settled;
      },
      { timeout: 60_000, interval: 300 },
    )
    .toBe(true);
  return found;
}

test('every leaf of the definition has its control, its form, or a reason', { timeout: 240_000 }, async () => {
  await browser.viewport(1440, 1000);
  const reached = new Set<string>();
  shown.show();
  for (const [screen, design] of LOOKED_AT) {
    window.location.hash = `#${screen.toLowerCase()}`;
    shown.work.open(screen, { ok: true, design });
    await frame();
    // Fit of a job with trials is loaded when there is one.
    if (screen === 'Fit')
      await expect.poll(() => document.querySelector('.fit-screen'), { timeout: 30_000 }).not.toBeNull();
    for (const path of await offered(screen)) reached.add(path);
    if (screen === 'Cut') {
      [...document.querySelectorAll('button')].find(({ textContent }) => textContent === 'Correct')?.click();
      await frame();
    }
    for (const [path, [where, there]] of Object.entries(BY_FORM)) if (where === screen && there()) reached.add(path);
  }
  const covered = (leaf: string) =>
    leaf in NOT_REACHED || [...reached].some((path) => leaf === path || leaf.startsWith(`${path}[`));
  expect(leaves.length).toBeGreaterThan(150);
  expect(leaves.filter((leaf) => !covered(leaf))).toEqual([]);
  // A reason that holds no more is taken off.
  expect(Object.keys(NOT_REACHED).filter((path) => reached.has(path) || !leaves.includes(path))).toEqual([]);
});
