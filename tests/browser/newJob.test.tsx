/**
 * A job of one's own from nothing: an arrangement, the sizes known written on its drawing, a pair that moves, and then
 * the job.
 *
 * @module-tag long
 */
import { beforeEach, expect, test } from 'vitest';
import { page as browser, userEvent } from 'vitest/browser';
import { sayAngles } from '../../src/app/state/angles.ts';
import { expectAccessible, expectNoSidewaysScroll, page, pressInBar } from './page.tsx';

const shown = page('#new');
beforeEach(() => sayAngles('half'));

const design = () => shown.work.store.getState().design;
const press = (name: string | RegExp) => userEvent.click(browser.getByRole('button', { name }).first());
const field = (name: string) => browser.getByLabelText(name, { exact: true });
const text = (name: string) => (field(name).element() as HTMLInputElement).value;
const type = async (name: string, what: string) => {
  await userEvent.fill(field(name), what);
  await userEvent.keyboard('{Enter}');
};
const headline = () => document.querySelector('.verdict h2')?.textContent ?? '';
const choose = async (name: RegExp) => {
  await expect.poll(headline).toMatch(/which of these/);
  await press(name);
  await expect.poll(headline).toMatch(/^0 of /);
};

test('from a sketch in inches to a job: what is typed is known, the rest in proportion and assumed, nothing of a demo', async () => {
  await choose(/^Double cone at the nose/);
  await userEvent.selectOptions(browser.getByLabelText('Units'), 'inch, tenths');
  await userEvent.selectOptions(browser.getByLabelText('Angles said as'), 'included angle');
  await type('Diameter of the shallow cone', '7/8');
  expect(text('Diameter of the shallow cone')).toBe('0.8750');
  await type('Angle of the shallow cone', '6');
  await type('Angle of the steep cone', '1:0.5');
  expect(text('Angle of the steep cone')).toBe('90.0° incl');
  await type('Length of the shallow cone', '1');
  await type('Length of the rear bearing', '7/8');
  await type('From the shallow cone back to the rear bearing', '3 5/8');
  // Proportions follow what is known.
  expect(Number(text('Diameter of the steep cone'))).toBeCloseTo((0.875 * 30) / 22, 1);
  await expect.poll(headline).toBe('6 of 13 sizes are yours, 7 are assumed.');
  const assumed = /(\d+) numbers of the seats/.exec(document.querySelector('.verdict p')!.textContent!)![1];
  await userEvent.fill(field('Name of the job'), 'Bench lathe');
  await press('Start the job');
  await expect.poll(() => window.location.hash).toBe('#fit');
  expect(design().title).toBe('Bench lathe');
  expect(Object.keys(design()).sort()).toEqual(['assumed', 'conepair', 'seats', 'title']);
  const [rear, shallow] = design().seats;
  expect(shallow!.journal.diameter).toBeCloseTo(22.225, 9);
  expect(shallow!.journal.halfAngle).toBe(3);
  expect(rear!.journal.to).toBeCloseTo(-4.625 * 25.4, 5);
  expect(design().assumed).not.toContain('seats[1].journal.diameter');
  expect(design().assumed).toContain('seats[1].bush.diameter');
  await expect
    .poll(() => document.querySelector('.verdict')?.textContent)
    .toMatch(
      /Measure all bores and the rear and steep journals: nobody has\. Or assemble it for a trial, which needs no gauge\..*Assumed, never measured: \d+ numbers/,
    );
  // As many as were told before the job was begun.
  expect(document.querySelector('.verdict')!.textContent).toContain(`${assumed} numbers of the seats`);
  // Nothing is praised that nobody has read.
  expect(document.querySelector('.verdict.good')).toBeNull();
  expect(document.querySelector('.verdict .now')!.textContent).toMatch(/^As assumed: /);
  // Another job, with a history of its own.
  expect(shown.steps()).toBe(0);
});

test('the picture is there at once, moves by hand, and no hand on it changes the work that is open', async () => {
  const before = design();
  await choose(/^Two cones opposed/);
  await expect.poll(() => document.querySelector('.section .journal')).toBeTruthy();
  const journal = document.querySelector<SVGElement>('.section .journal')!;
  expect(journal.getAttribute('aria-valuenow')).toBe('0');
  journal.focus();
  await userEvent.keyboard('{ArrowRight}{ArrowRight}');
  await expect.poll(() => journal.getAttribute('aria-valuenow')).toBe('2');
  expect(design()).toBe(before);
});

test('a figure that does not go with the others is told, the picture stays, and the job waits', async () => {
  await choose(/^Double cone alone/);
  await type('Diameter of the shallow cone', 'wide');
  await expect
    .poll(() => document.querySelector('.wrong')?.textContent)
    .toMatch(/Diameter of the shallow cone: found "wide"/);
  const start = browser.getByRole('button', { name: 'Start the job' });
  expect(start.element().getAttribute('aria-disabled')).toBe('true');
  await userEvent.keyboard('{Escape}');
  await expect.poll(() => document.querySelector('.wrong')).toBeNull();
  // A cone that would come to a point.
  await type('Diameter of the shallow cone', '2');
  await expect.poll(() => document.querySelector('.wrong')?.textContent).toBeUndefined();
  await type('Length of the shallow cone', '40');
  await expect
    .poll(() => document.querySelector('.wrong')?.textContent)
    .toMatch(/it comes to a point within its length of 40/);
  // At the field itself too, for whoever asks it.
  expect(field('Length of the shallow cone').element().getAttribute('aria-invalid')).toBe('true');
  expect(field('Length of the steep cone').element().getAttribute('aria-invalid')).toBe('false');
  expect(start.element().getAttribute('aria-disabled')).toBe('true');
  expect(document.querySelector('.section')).toBeTruthy();
  await type('Length of the shallow cone', '');
  await expect.poll(() => document.querySelector('.wrong')).toBeNull();
  expect(start.element().getAttribute('aria-disabled')).toBe('false');
});

test('what is written stays while another screen is looked at; Enter on an assumed figure says that it is so', async () => {
  await choose(/^Straight at both ends/);
  await type('Diameter of the front bearing', '25');
  window.location.hash = '#fit';
  await expect.poll(() => document.querySelector('.controls')).toBeTruthy();
  window.location.hash = '#new';
  await expect.poll(headline).toBe('1 of 7 sizes are yours, 6 are assumed.');
  expect(text('Diameter of the front bearing')).toBe('25.000');
  await userEvent.click(field('Length of the front bearing'));
  await userEvent.keyboard('{Enter}');
  await expect.poll(headline).toBe('2 of 7 sizes are yours, 5 are assumed.');
});

test('on every width nothing leaves the page, no field lies on another, targets are large enough; axe is content', async () => {
  await choose(/^Double cone at the nose/);
  await expectNoSidewaysScroll();
  for (const width of [390, 820, 1440]) {
    await browser.viewport(width, 900);
    const boxes = [...document.querySelectorAll('.sketch input')].map((input) => input.getBoundingClientRect());
    expect(boxes).toHaveLength(13);
    for (const [i, a] of boxes.entries()) {
      expect(a.height, `at ${width}`).toBeGreaterThanOrEqual(44);
      for (const b of boxes.slice(i + 1))
        expect(
          a.left < b.right - 1 && b.left < a.right - 1 && a.top < b.bottom - 1 && b.top < a.bottom - 1,
          `two fields at ${width}`,
        ).toBe(false);
    }
  }
  await expectAccessible();
});

test('from a dimensioned sketch by the keyboard: few actions', async () => {
  let actions = 0;
  await choose(/^Double cone at the nose/);
  actions++;
  // By Tab from field to field, as a person types from a drawing.
  await userEvent.click(field('Diameter of the steep cone'));
  actions++;
  for (const [i, what] of [
    '30',
    '30.007',
    '45',
    '3',
    '1.2',
    '22',
    '22.005',
    '3',
    '26',
    '92',
    '18',
    '18.005',
    '22',
  ].entries()) {
    // Tab selects what stands in the field, as it does for a person.
    if (i > 0) await userEvent.keyboard('{Tab}');
    else (document.activeElement as HTMLInputElement).select();
    await userEvent.keyboard(what);
    actions++;
  }
  await userEvent.keyboard('{Enter}');
  await expect.poll(headline).toBe('Every size on the drawing is yours.');
  await press('Start the job');
  actions++;
  await expect.poll(() => window.location.hash).toBe('#fit');
  expect(actions).toBeLessThan(20);
  expect(design().seats.map(({ bush }) => bush.diameter)).toEqual([18.005, 22.005, 30.007]);
});

test('undo and redo are of what is begun, by button and by key, and leave the job that is open alone', async () => {
  shown.work.moveTo(0.01);
  const before = design();
  await choose(/^Double cone alone/);
  await type('Diameter of the shallow cone', '25');
  await pressInBar('Undo');
  await expect.poll(headline).toMatch(/^0 of /);
  await pressInBar('Redo');
  await expect.poll(headline).toMatch(/^1 of /);
  (document.activeElement as HTMLElement).blur();
  await userEvent.keyboard('{Control>}z{/Control}{Control>}z{/Control}');
  await expect.poll(headline).toMatch(/which of these/);
  expect(design()).toBe(before);
  // Its units are its own.
  await press(/^Double cone alone/);
  await userEvent.selectOptions(browser.getByLabelText('Units'), 'inch, tenths');
  expect(shown.work.store.getState().system).toBe('metric');
  expect(document.querySelector('figcaption')!.textContent).toMatch(/lengths in inches/);
  await press('Start the job');
  await expect.poll(() => window.location.hash).toBe('#fit');
  expect(shown.work.store.getState().system).toBe('inch');
});

test('a new job that is given up is offered back where one comes to', async () => {
  await choose(/^Double cone alone/);
  await type('Diameter of the shallow cone', '25');
  await press('Give it up');
  await expect.poll(() => window.location.hash).toBe('#jobs');
  await press('Bring it back');
  await expect.poll(headline).toMatch(/^1 of /);
  window.location.hash = '#jobs';
  await expect.poll(() => document.querySelector('.jobs')?.textContent).toMatch(/begun and not started/);
  expect(document.querySelector('.jobs')!.textContent).not.toMatch(/given up/);
});

test('an assumed taper per foot has room in its field; a fraction typed there is one of an inch', async () => {
  sayAngles('foot');
  await choose(/^Double cone alone/);
  await userEvent.selectOptions(browser.getByLabelText('Units'), 'inch, tenths');
  const field = browser.getByLabelText(/^Angle of the shallow cone/);
  const input = () => field.element() as HTMLInputElement;
  expect(input().value).toMatch(/^1\.2\d{1,3} in\/ft$/);
  await userEvent.fill(field, '3/4');
  await userEvent.keyboard('{Enter}');
  await expect.poll(() => input().value).toMatch(/^0\.75\b/);
  sayAngles('half');
});

test('a nose thinner than the cone behind it starts no job: each field that could mend it is marked', async () => {
  await choose(/^Double cone at the nose/);
  await type('Diameter of the shallow cone', '22');
  await type('Diameter of the steep cone', '20');
  await expect
    .poll(() => document.querySelector('.wrong')?.textContent)
    .toMatch(/thinner than the shallow cone behind it, 22\.000 mm/);
  const marked = [...document.querySelectorAll('.sketch li')].filter((li) => li.querySelector('[aria-invalid="true"]'));
  expect(marked.map((li) => li.querySelector('label')!.textContent).sort()).toEqual(
    [
      'Angle of the steep cone',
      'Diameter of the shallow cone',
      'Diameter of the steep cone',
      'Length of the steep cone',
    ].sort(),
  );
  expect(browser.getByRole('button', { name: 'Start the job' }).element().getAttribute('aria-disabled')).toBe('true');
  await type('Diameter of the steep cone', '30');
  await expect.poll(() => document.querySelector('.wrong')).toBeNull();
  // Odd is told, and forbids nothing.
  await type('Diameter of the rear bearing', '21');
  await expect.poll(() => document.querySelector('.odd')?.textContent).toMatch(/unless it is a sleeve/);
  expect(browser.getByRole('button', { name: 'Start the job' }).element().getAttribute('aria-disabled')).toBe('false');
});

test('the drawing of a job that stands: what is typed there is the job’s, what is assumed follows, undo takes it back', async () => {
  await choose(/^Double cone at the nose/);
  await type('Length of the rear bearing', '23');
  await press('Start the job');
  await expect.poll(() => document.querySelectorAll('.controls details').length).toBeGreaterThan(3);
  const details = [...document.querySelectorAll<HTMLDetailsElement>('.controls details')].find((one) =>
    one.textContent!.startsWith('The sizes on a drawing'),
  )!;
  await userEvent.click(details.querySelector('summary')!);
  await expect.poll(() => document.querySelectorAll('.sketch input')).toHaveLength(13);
  const isAssumed = (name: string) => field(name).element().className === 'assumed';
  // It was typed, though nobody knows where that seat stands.
  expect(isAssumed('Length of the rear bearing')).toBe(false);
  expect(isAssumed('Length of the shallow cone')).toBe(true);
  const before = design();
  await type('Diameter of the shallow cone', '24');
  expect(design().seats[1]!.journal.diameter).toBe(24);
  expect(design().seats[1]!.bush.diameter).toBeCloseTo(24.005, 9);
  // By as much as the size that was typed is another, to half a millimetre.
  expect(design().seats[2]!.journal.diameter).toBe(33);
  expect(text('Bore of the shallow cone')).toBe('24.005');
  await type('Length of the shallow cone', '28');
  await type('From the shallow cone back to the rear bearing', '90');
  expect(design().seats[0]!.journal).toMatchObject({ from: -141, to: -118 });
  expect(design().assumed).not.toContain('seats[0].journal.from');
  // A figure that is none waits in its field.
  await type('Bore of the steep cone', 'wide');
  expect(document.querySelector('.wrong')!.textContent).toMatch(/^Bore of the steep cone: found "wide"/);
  await userEvent.keyboard('{Escape}');
  await expect.poll(() => document.querySelector('.wrong')).toBeNull();
  // An emptied field stands empty, says so and waits; the job is as it was.
  const stood = design();
  const bore = text('Bore of the steep cone');
  await type('Bore of the steep cone', '');
  expect(text('Bore of the steep cone')).toBe('');
  expect(document.querySelector('.wrong')!.textContent).toMatch(/^Bore of the steep cone: the field is empty/);
  expect(design()).toBe(stood);
  await press(`Leave it: ${bore}`);
  await expect.poll(() => text('Bore of the steep cone')).toBe(bore);
  expect(document.querySelector('.wrong')).toBeNull();
  for (let n = 0; n < 3; n++) await press('Undo');
  expect(design()).toEqual(before);
  await expectAccessible();
});

test('in a started job Cut tells nothing to be taken off until the parts are measured, and Sheet is no work order', async () => {
  await choose(/^Double cone alone/);
  await press('Start the job');
  await expect.poll(() => window.location.hash).toBe('#fit');
  shown.work.change((d) => ({
    ...d,
    seats: d.seats.map(({ journal, bush, ...seat }, i) => {
      // Both read, so that neither follows the other any more.
      const by = i === 0 ? 0.02 : 0;
      return {
        ...seat,
        journal: { ...journal, diameter: journal.diameter + by / 20 },
        bush: { ...bush, diameter: bush.diameter + by },
      };
    }),
    cut: { allow: [{ seat: 'steep', part: 'journal', limit: 0.2 }] },
  }));
  window.location.hash = '#cut';
  await expect
    .poll(headline)
    .toBe(
      'Measure both parts: of diameter, angle and place not all is known. Or assemble it for a trial, which needs no gauge.',
    );
  await expect.poll(() => document.querySelector('.verdict.stop')).toBeTruthy();
  const plan = document.querySelector<HTMLDetailsElement>('[id="cut/plan"]')!;
  expect(document.querySelectorAll('.steps, [id="cut/order"], [id="cut/angle"]')).toHaveLength(0);
  expect(plan.textContent).toMatch(/It would take [\d.]+ µm off the steep journal/);
  expect(plan.textContent).toMatch(/not to cut by/);
  expect(document.body.textContent).not.toMatch(/Take the plan as done/);
  expect(document.querySelector('.verdict.good')).toBeNull();
  window.location.hash = '#sheet';
  await expect
    .poll(() => document.querySelector('.leaf')?.textContent)
    .toMatch(/Not a work order: do not cut to this sheet/);
  // Said to be so, it is a plan like others.
  shown.work.change(({ assumed: _, ...d }) => d);
  window.location.hash = '#cut';
  await expect.poll(headline).toMatch(/off the steep journal/);
  expect(document.querySelector('[id="cut/plan"]')).toBeNull();
});
