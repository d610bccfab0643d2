/** The Measure screen in Chromium: a notebook written, read, doubted, taken into the design. */
import { flushSync } from 'react-dom';
import { expect, test } from 'vitest';
import { page as browser, userEvent } from 'vitest/browser';
import type { Design } from '../../src/design/definition.ts';
import { predictedReading } from '../../src/report/measure/predictedReading.ts';
import { expectAccessible, expectNoSidewaysScroll, page } from './page.tsx';

const shown = page('#measure');
const verdict = () => document.querySelector('.verdict')!.textContent!;

type Reading = NonNullable<Design['readings']>[number];

/** What the bench would tell of parts that are not quite as drawn: the shallow journal 4 µm larger. */
function notebookOf(design: Design): Reading[] {
  const truth: Design = {
    ...design,
    seats: design.seats.map((seat, i) =>
      i === 0 ? { ...seat, journal: { ...seat.journal, diameter: seat.journal.diameter + 0.004 } } : seat,
    ),
  };
  const setUps: Reading[] = design.seats.flatMap(({ name, journal, bush }) => [
    ...([0.1, 0.3, 0.5, 0.7, 0.9] as const).flatMap((share): Reading[] => [
      {
        kind: 'diameter',
        seat: name,
        part: 'journal',
        value: 0,
        sigma: 0.001,
        station: journal.from + share * (journal.to - journal.from),
      },
      {
        kind: 'diameter',
        seat: name,
        part: 'bush',
        value: 0,
        sigma: 0.001,
        station: bush.from + share * (bush.to - bush.from),
      },
    ]),
  ]);
  return setUps.map((reading) => ({ ...reading, value: predictedReading(truth, reading).value! }));
}

const field = () => document.querySelector<HTMLInputElement>('.new-entry input')!;
const readings = () => shown.work.store.getState().design.readings ?? [];

test('an empty notebook says how to begin; a reading of every kind is written down with its drawing', {
  tags: ['long'],
}, async () => {
  await expect.poll(verdict).toMatch(/No readings yet/);
  const names = ['Diameter', 'Over two rolls', 'Ball depth', 'Sine bar', 'Straightness', 'Stand-off', 'Shake'];
  for (const [i, name] of names.entries()) {
    await userEvent.click(browser.getByRole('button', { name: `+ ${name}`, exact: true }).last());
    // What the design would give is shown, and is neither in the field nor an entry.
    expect(field().value).toBe('');
    expect(field().placeholder).toMatch(/\d/);
    expect(readings().length).toBe(i);
    await userEvent.fill(field(), field().placeholder);
    if (i % 2 === 0) await userEvent.keyboard('{Enter}');
    else await userEvent.click(browser.getByRole('button', { name: 'Write it down' }));
    await expect.poll(() => readings().length).toBe(i + 1);
    expect(field()).toBeNull();
    // It stands folded, as the others: a notebook is read line by line.
    const entry = document.querySelectorAll<HTMLDetailsElement>('.notebook details')[i]!;
    expect(entry.open).toBe(false);
    entry.open = true;
  }
  expect(readings().map(({ kind }) => kind)).toEqual([
    'diameter',
    'overRolls',
    'ballDepth',
    'sineRise',
    'straightness',
    'standOff',
    'shake',
  ]);
  await expect.poll(() => document.querySelectorAll('.set-up').length).toBe(7);
  expect(document.querySelector('main')!.innerHTML).not.toMatch(/NaN|Infinity|undefined/);
  await userEvent.click(browser.getByRole('button', { name: 'Strike out this reading' }).first());
  expect(readings().length).toBe(6);
  await userEvent.click(browser.getByRole('button', { name: 'Undo' }));
  expect(readings().length).toBe(7);
});

test('what is no number is not written down, nor what is left', async () => {
  const ask = browser.getByRole('button', { name: '+ Diameter', exact: true });
  await userEvent.click(ask);
  await userEvent.keyboard('{Enter}');
  expect(document.querySelector('.new-entry .error')!.textContent).toMatch(/type what was read/);
  await userEvent.fill(field(), 'about 22');
  await userEvent.keyboard('{Enter}');
  expect(document.querySelector('.new-entry .error')!.textContent).toMatch(/type a number/);
  await userEvent.click(browser.getByRole('button', { name: 'Leave it' }));
  expect(field()).toBeNull();
  expect(readings().length).toBe(0);
});

test('nothing is written down while a field of the set-up is in error, nor told what it would read', async () => {
  shown.open('notebook');
  await userEvent.click(browser.getByRole('button', { name: '+ Ball depth', exact: true }));
  const form = document.querySelector<HTMLElement>('.new-entry')!;
  const said = () => form.querySelector('[role=status]')!.textContent!;
  const ball = [...form.querySelectorAll('.local')]
    .find((local) => local.textContent!.startsWith('Ball diameter'))!
    .querySelector('input')!;
  await userEvent.fill(field(), '15');
  await userEvent.fill(ball, 'abc');
  await userEvent.click(browser.getByRole('button', { name: 'Write it down' }));
  await expect.poll(() => form.querySelector('.error')!.textContent).toBe('mend the set-up first: ball diameter');
  expect(said()).toMatch(/No result while ball diameter is not taken/);
  expect(readings().length).toBe(16);
  await userEvent.fill(ball, '30');
  await userEvent.keyboard('{Enter}');
  await expect.poll(said).toMatch(/would read/);
  await userEvent.fill(ball, 'abc');
  // The last ball rested in the steep seat, proud of its face.
  const way = form.querySelector<HTMLSelectElement>('select[aria-label="Which way"]')!;
  expect(way.value).toBe('-1');
  await userEvent.selectOptions(way, 'down to its top');
  await userEvent.selectOptions(browser.getByLabelText('Seat', { exact: true }), 'shallow');
  // Another surface has another set-up: what was typed of the former is gone.
  await expect.poll(said).toMatch(/would read/);
  await userEvent.click(browser.getByRole('button', { name: 'Write it down' }));
  await expect.poll(() => readings().length).toBe(17);
  expect(readings()[16]).toMatchObject({ kind: 'ballDepth', seat: 'shallow', value: 15 });
});

test('a reading far from the drawing is asked after and not refused; one that cannot be is refused', async () => {
  shown.open('notebook');
  await userEvent.click(browser.getByRole('button', { name: '+ Diameter', exact: true }).first());
  await userEvent.fill(field(), `${Number.parseFloat(field().placeholder) + 10}`);
  await expect
    .poll(() => document.querySelector('.new-entry .far')?.textContent)
    .toMatch(/^(9\.9|10\.0)\d* mm from the drawing: really\?$/);
  await userEvent.keyboard('{Enter}');
  await expect.poll(() => readings().length).toBe(17);
  await expect
    .poll(() => details()[16]!.querySelector('.remark')!.textContent)
    .toMatch(/mm from the drawing: really\?/);
  await userEvent.click(browser.getByRole('button', { name: '+ Shake', exact: true }).first());
  await userEvent.fill(field(), '-10');
  await userEvent.keyboard('{Enter}');
  await expect
    .poll(() => document.querySelector('.new-entry .error')!.textContent)
    .toMatch(/cannot be less than nothing/);
  expect(readings().length).toBe(17);
});

test('a helper tells no result while one of its fields is in error', async () => {
  shown.open('notebook');
  const helper = openHelper('Sine bar:');
  const box = (title: string) =>
    [...helper.querySelectorAll('.local')]
      .find((local) => local.textContent!.startsWith(title))!
      .querySelector('input')!;
  const status = () => [...helper.querySelectorAll('[role=status]')].map((p) => p.textContent).join(' ');
  await expect.poll(status).toMatch(/on a bar of 100 mm a stack of/);
  for (const [title, wrong] of [
    ['Half angle', '-3'],
    ['Half angle', '89'],
    ['Stack', '101'],
    ['Stack', ''],
    ['Wear blocks', 'x'],
  ] as const) {
    const before = box(title).value;
    await userEvent.fill(box(title), wrong);
    await userEvent.keyboard('{Enter}');
    await expect
      .poll(status, { message: `${title} ${wrong}` })
      .toMatch(new RegExp(`^No result while ${title.toLowerCase()} is not taken`));
    await userEvent.fill(box(title), before);
    await userEvent.keyboard('{Enter}');
    await expect.poll(status).toMatch(/on a bar of 100 mm a stack of/);
  }
  // What follows another field is given up with the value it followed.
  await userEvent.fill(box('Stack'), '101');
  await userEvent.fill(box('Half angle'), '5');
  await userEvent.keyboard('{Enter}');
  await expect.poll(status).toMatch(/^For 5/);
});

test('what nothing was read of is drawn as drawn and never taken over; the shapes are then a second choice', async () => {
  shown.open('notebook');
  shown.work.change((d) => ({ ...d, readings: d.readings!.slice(0, 8) }));
  const use = () => document.querySelector<HTMLButtonElement>('.shapes ~ .buttons button')!;
  await expect.poll(() => use().textContent).toBe('Use these shapes all the same');
  expect(document.querySelectorAll('.shape .fitted').length).toBe(2);
  expect(document.querySelectorAll('.shape figcaption')[0]!.textContent).toBe(
    'The journal and the bush stand as drawn, not measured.',
  );
  expect(document.querySelector('.told')!.textContent).toMatch(/as drawn, not measured: steep/);
  expect(verdict()).toMatch(/Nothing was read of the steep journal and steep bush/);
  const before = shown.work.store.getState().design.seats;
  // One ball tells neither half angle nor diameter: there is nothing to take.
  shown.work.change((d) => ({ ...d, readings: d.readings!.slice(4, 5) }));
  await expect.poll(() => document.querySelector('.shapes ~ .buttons')).toBeNull();
  await expect.poll(() => document.querySelectorAll('.shape .fitted.open').length).toBe(1);
  expect(shown.work.store.getState().design.seats).toEqual(before);
});

test('rolls are proposed where they touch a tenth from either end, also with their centres beyond the surface', async () => {
  shown.open('notebook');
  const items = () =>
    [...openHelper('Balls and rolls').querySelectorAll('li')].map((li) => li.textContent!.replaceAll('−', '-'));
  await expect.poll(() => items().length).toBe(2);
  let beyond = 0;
  shown.work.store.getState().design.seats.forEach(({ name, journal: { from, to, halfAngle } }, i) => {
    const found = new RegExp(
      `^${name}: .*rolls of ([\\d.]+) mm on the journal, centres at stations (\\S+) mm and (\\S+) mm`,
    ).exec(items()[i]!);
    if (!found) {
      expect(items()[i]).toMatch(/no two places on this journal/);
      return;
    }
    const [roll, ...centres] = found.slice(1).map(Number) as [number, number, number];
    const shares = centres.map(
      (centre) => (centre + (roll / 2) * Math.sin((halfAngle * Math.PI) / 180) - from) / (to - from),
    );
    expect(shares[0]).toBeCloseTo(0.1, 2);
    expect(shares[1]).toBeCloseTo(0.9, 2);
    if (centres[0]! < from) beyond++;
  });
  expect(beyond).toBe(1);
});

test('a suggested reading is asked for, not made up', async () => {
  shown.work.change((d) => ({ ...d, readings: notebookOf(d).slice(0, 6) }));
  await expect.poll(() => document.querySelector('[aria-label="What to read next"] button')).toBeTruthy();
  document.querySelector<HTMLButtonElement>('[aria-label="What to read next"] button')!.click();
  await expect.poll(field).toBeTruthy();
  expect(readings().length).toBe(6);
  await userEvent.fill(field(), field().placeholder);
  await userEvent.keyboard('{Enter}');
  await expect.poll(() => readings().length).toBe(7);
});

test('the shape follows from the readings and is taken into the design', async () => {
  const { design } = shown.work.store.getState();
  shown.work.change((d) => ({ ...d, readings: notebookOf(d) }));
  await expect.element(browser.getByRole('button', { name: 'Use these shapes in the design' })).toBeVisible();
  expect(document.querySelectorAll('.shape .band').length).toBe(4);
  await userEvent.click(browser.getByRole('button', { name: 'Use these shapes in the design' }));
  const taken = shown.work.store.getState().design.seats[0]!.journal;
  expect(taken.diameter).toBeCloseTo(design.seats[0]!.journal.diameter + 0.004, 6);
  expect(taken.halfAngle).toBeCloseTo(design.seats[0]!.journal.halfAngle, 6);
});

test('a slip of the pen is pointed out where it stands', async () => {
  shown.work.change((d) => ({
    ...d,
    readings: notebookOf(d).map((reading, i) => (i === 2 ? { ...reading, value: reading.value + 0.02 } : reading)),
  }));
  await expect.poll(verdict).toMatch(/Reading 3 .* does not go with the others/);
  expect(document.querySelectorAll('.doubtful').length).toBe(1);
  expect(document.querySelectorAll('.residual.off').length).toBe(1);
  // From the verdict to where it stands: opened, in sight, under the hand.
  await userEvent.click(browser.getByRole('button', { name: /^To reading 3:/ }));
  const entry = document.querySelectorAll<HTMLDetailsElement>('.notebook details')[2]!;
  await expect.poll(() => entry.open && document.activeElement === entry.querySelector('summary')).toBe(true);
});

test('rows of a spreadsheet are taken whole or not at all', async () => {
  await userEvent.click(browser.getByText('To and from a spreadsheet'));
  const field = browser.getByLabelText('Rows copied from a spreadsheet', { exact: false });
  await userEvent.fill(
    field,
    'kind;seat;part;value;sigma;station\ndiameter;shallow;bush;21,998;0,001;-2\ndiameter;shalow;bush;21,9;0,001;-9',
  );
  await userEvent.click(browser.getByRole('button', { name: 'Add these rows' }));
  await expect.element(browser.getByRole('alert')).toHaveTextContent(/Row 3, seat: found "shalow"/);
  expect(shown.work.store.getState().design.readings).toBeUndefined();
  await userEvent.fill(field, 'kind;seat;part;value;sigma;station\ndiameter;shallow;bush;21,998;1 µm;-2');
  await userEvent.click(browser.getByRole('button', { name: 'Add these rows' }));
  expect(shown.work.store.getState().design.readings).toEqual([
    { kind: 'diameter', seat: 'shallow', part: 'bush', value: 21.998, sigma: 0.001, station: -2 },
  ]);
});

test('no sideways scroll at any width, and an axe scan is clean in both themes', { tags: ['long'] }, async () => {
  shown.work.change((d) => ({ ...d, readings: notebookOf(d) }));
  await expectNoSidewaysScroll();
  await expectAccessible();
});

const details = () => [...document.querySelectorAll<HTMLDetailsElement>('.notebook details')];

test('every entry shows that it opens, and says the whole reading in words; what is inside is made when it is looked at', async () => {
  shown.open('notebook');
  await expect.poll(() => details().length).toBe(16);
  for (const summary of document.querySelectorAll('.notebook summary')) {
    const sign = getComputedStyle(summary, '::before');
    expect(sign.content).toBe('"▸"');
    expect(sign.transform).toBe('none');
  }
  expect(details()[3]!.textContent).toContain(
    'Sine bar of 100 mm on a stack of 5.234 mm under the shallow journal, travel 18.000 mm: the indicator rises 1.50 µm',
  );
  expect(document.querySelectorAll('.set-up').length).toBe(0);
  details()[3]!.open = true;
  await expect.poll(() => document.querySelectorAll('.set-up').length).toBe(1);
  expect(getComputedStyle(details()[3]!.querySelector('summary')!, '::before').transform).not.toBe('none');
});

test('where a reading is in doubt the shapes are a second choice with its reason, and its stem is broken at the edge of the scale', async () => {
  shown.open('notebook');
  const use = () => document.querySelector<HTMLButtonElement>('.shapes ~ .buttons button')!;
  await expect.poll(() => use()?.className).toBe('main');
  shown.work.change((d) => ({
    ...d,
    readings: d.readings!.map((reading, i) => (i === 0 ? { ...reading, value: reading.value + 0.1 } : reading)),
  }));
  await expect.poll(() => use().textContent).toBe('Use these shapes all the same');
  expect(use().className).toBe('');
  expect(document.getElementById(use().getAttribute('aria-describedby')!)!.textContent).toMatch(
    /Reading 1 does not go with the others/,
  );
  // The scale keeps to where readings belong, the figure says how far out it is.
  const far = document.querySelector('.residual.off .far-out text')!.textContent!;
  expect(Number(far)).toBeGreaterThan(50);
  const ticks = [...document.querySelectorAll('.chart .grid text')]
    .map((t) => Number(t.textContent!.replace('−', '-')))
    .filter((t) => Number.isInteger(t) && Math.abs(t) <= 5);
  expect(ticks).toContain(5);
  const heights = [
    ...document.querySelectorAll<SVGTextElement>('.residual')[0]!.parentElement!.querySelectorAll('.grid text'),
  ]
    .map((t) => t.getBoundingClientRect().top)
    .sort((a, b) => a - b);
  for (let k = 1; k < heights.length; k++) expect(heights[k]! - heights[k - 1]!).toBeGreaterThan(9);
  const before = JSON.stringify(shown.work.store.getState().design.seats);
  use().click();
  expect(JSON.stringify(shown.work.store.getState().design.seats)).not.toBe(before);
});

test('rows without a heading are told so once; the heading is put above them when asked for', async () => {
  await userEvent.click(browser.getByText('To and from a spreadsheet'));
  const pasted = browser.getByLabelText('Rows copied from a spreadsheet', { exact: false });
  await userEvent.fill(
    pasted,
    Array.from({ length: 9 }, (_, k) => `diameter\tshallow\tbush\t21.99\t0.001\t${-k - 2}`).join('\n'),
  );
  await userEvent.click(browser.getByRole('button', { name: 'Add these rows' }));
  await expect.poll(() => document.querySelectorAll('[role=alert] li').length).toBe(1);
  expect(document.querySelector('[role=alert] h2')!.textContent).toBe('Nothing was added: the rows have no heading.');
  await userEvent.click(browser.getByRole('button', { name: 'Put this heading above them' }));
  await userEvent.click(browser.getByRole('button', { name: 'Add these rows' }));
  await expect.poll(() => readings().length).toBe(9);
});

const openHelper = (words: string) => {
  const summary = [...document.querySelectorAll('summary')].find((s) => s.textContent!.includes(words))!;
  summary.parentElement!.setAttribute('open', '');
  return summary.parentElement!;
};

test('an inch shop is offered inch bars, blocks, balls and rolls, a metric one metric; a stack keeps the unit of its set', async () => {
  shown.open('steep-first');
  shown.work.store.setState({ system: 'inch' });
  const sine = () => openHelper('Sine bar:').textContent!;
  await expect.poll(sine).toMatch(/on a bar of 5 in a stack of 0\.26168 in: blocks 0\.050 \+ 0\.1007 \+ 0\.111 in/);
  expect(openHelper('Balls and rolls').textContent).toMatch(
    /balls \d[\d/ ]* in \(touches .* rolls of \d\/\d+ in on the journal/,
  );
  await userEvent.selectOptions(browser.getByLabelText('Block set'), 'M112');
  await expect.poll(sine).toMatch(/blocks [\d.]+( \+ [\d.]+)* mm/);
  expect(sine()).toMatch(/a stack of 6\.64667 mm \(0\.26168 in\)/);
  await userEvent.selectOptions(browser.getByLabelText('Blocks, bars, balls and rolls of the shop'), 'metric');
  await expect.poll(sine).toMatch(/on a bar of 100 mm/);
  expect(openHelper('Balls and rolls').textContent).toMatch(/balls \d[\d.]* mm \(touches/);
  await userEvent.selectOptions(browser.getByLabelText('Blocks, bars, balls and rolls of the shop'), '');
  await userEvent.click(browser.getByRole('button', { name: '+ Sine bar', exact: true }));
  await expect
    .poll(() => document.querySelector('.new-entry label')!.textContent)
    .toMatch(/^Read: Sine bar of 5 in on a stack of 0\.2617 in under the shallow journal/);
  // dials and expansions too
  expect(openHelper('not at 20 °C').textContent).toMatch(/6\.28 steel/);
  expect([...openHelper('not at 20 °C').querySelectorAll('input')].map((input) => input.value)).toContain(
    '6.278 µin/(in·°F)',
  );
});

test('a set-up is planned before it is read: its value follows the surface, and what cannot be read says why', async () => {
  shown.open('notebook');
  await userEvent.click(browser.getByRole('button', { name: '+ Ball depth', exact: true }));
  const said = () => document.querySelector('.new-entry [role=status]')!.textContent!;
  await expect.poll(said).toMatch(/The parts as drawn would read .*, as the readings so far tell them/);
  const before = said();
  const form = document.querySelector<HTMLElement>('.new-entry')!;
  await userEvent.selectOptions(browser.getByLabelText('Seat', { exact: true }), 'shallow');
  await expect.poll(said).not.toBe(before);
  const ball = [...form.querySelectorAll('.local')]
    .find((local) => local.textContent!.startsWith('Ball diameter'))!
    .querySelector('input')!;
  await userEvent.fill(ball, '3/8 in');
  await userEvent.keyboard('{Enter}');
  await expect.poll(said).toMatch(/cannot be read like this: .*(too small|rest on the edge|shallow)/);
  expect(readings().length).toBe(16);
});

/** Chosen without a pointer: there are many. */
const choose = (select: HTMLSelectElement, value: string) =>
  flushSync(() => {
    Object.getOwnPropertyDescriptor(HTMLSelectElement.prototype, 'value')!.set!.call(select, value);
    select.dispatchEvent(new Event('change', { bubbles: true }));
  });
const press = (name: string) =>
  flushSync(() => [...document.querySelectorAll('button')].findLast((button) => button.textContent === name)!.click());

test.each(['opposed-cones', 'notebook', 'rear-bearing'])(
  'every drawing of a set-up keeps within its frame: %s',
  async (demo) => {
    shown.open(demo);
    const form = () => document.querySelector<HTMLElement>('.new-entry')!;
    const select = (place: number) =>
      form().querySelectorAll<HTMLSelectElement>('.groups fieldset .local > select')[place];
    let drawn = 0;
    for (const kind of ['Diameter', 'Over two rolls', 'Ball depth', 'Sine bar', 'Straightness', 'Stand-off', 'Shake']) {
      press(`+ ${kind}`);
      await expect.poll(form).toBeTruthy();
      // A shake is of the pair; its only choice is on which side of the datum.
      if (kind === 'Shake') expect(select(1)).toBeUndefined();
      for (const seat of select(0) ? [...select(0)!.options].map(({ value }) => value) : ['']) {
        if (seat !== '') choose(select(0)!, seat);
        for (const part of select(1) ? ['journal', 'bush'] : ['']) {
          if (part !== '') choose(select(1)!, part);
          const svg = form().querySelector('.set-up');
          // A ball or a roll that touches nothing has no drawing.
          if (!svg) continue;
          drawn++;
          const frame = svg.getBoundingClientRect();
          expect(frame.height).toBeGreaterThan(60);
          for (const piece of svg.querySelectorAll('path, circle, rect, text')) {
            const box = piece.getBoundingClientRect();
            const off = Math.max(
              frame.left - box.left,
              box.right - frame.right,
              frame.top - box.top,
              box.bottom - frame.bottom,
            );
            expect(off, `${kind}, ${seat} ${part}: ${piece.outerHTML.slice(0, 90)}`).toBeLessThan(3);
          }
        }
      }
      press('Leave it');
    }
    expect(drawn).toBeGreaterThan(14);
  },
);

test('on a phone every figure of an entry stands under its own name, clear of the next', async () => {
  await browser.viewport(390, 800);
  shown.open('notebook');
  await expect.poll(() => details().length).toBe(16);
  for (const entry of document.querySelectorAll('.notebook summary.entry')) {
    const spans = [...entry.querySelectorAll<HTMLElement>('span[data-name]')].filter(
      (span) => span.offsetParent !== null,
    );
    expect(spans.length).toBe(3);
    for (const span of spans) {
      expect(span.scrollWidth).toBeLessThanOrEqual(span.clientWidth + 1);
      expect(getComputedStyle(span, '::before').content).toBe(`"${span.dataset.name}"`);
    }
  }
  // Nor is anything told in the tables cut off.
  shown.work.store.setState({ system: 'inch' });
  await expect.poll(() => document.querySelector('.told')!.textContent).toMatch(/tenths/);
  for (const table of document.querySelectorAll('.told .table'))
    expect(table.scrollWidth).toBeLessThanOrEqual(table.clientWidth + 1);
  for (const span of document.querySelectorAll<HTMLElement>('.notebook span[data-name]'))
    expect(span.scrollWidth, span.textContent!).toBeLessThanOrEqual(span.clientWidth + 1);
  await browser.viewport(1280, 800);
});

test('a half-entered reading survives another button and another screen; the last tools are offered again', async () => {
  shown.open('notebook');
  const button = (name: string) => browser.getByRole('button', { name, exact: true }).first();
  await userEvent.click(button('+ Over two rolls'));
  await userEvent.fill(field(), '27.5');
  await userEvent.click(button('+ Diameter'));
  await expect.poll(() => field().value).toBe('');
  window.location.hash = '#fit';
  await expect.poll(() => document.querySelector('.section')).toBeTruthy();
  window.location.hash = '#measure';
  await expect.poll(() => document.querySelector('.new-entry')).toBeTruthy();
  await userEvent.click(browser.getByRole('button', { name: '+ Over two rolls (begun)' }));
  await expect.poll(() => field().value).toBe('27.5');
  // Given up, it is gone; the next of its kind is set up like the last one written down.
  await userEvent.click(button('Leave it'));
  const last = readings().findLast((r) => r.kind === 'overRolls');
  flushSync(() =>
    shown.work.change((d) => ({
      ...d,
      readings: d.readings!.map((r) => (r === last && r.kind === 'overRolls' ? { ...r, roll: 4, sigma: 0.0015 } : r)),
    })),
  );
  await userEvent.click(button('+ Over two rolls'));
  const local = (title: string) =>
    [...document.querySelectorAll('.new-entry .local')].find((one) => one.textContent!.startsWith(title))!;
  await expect.poll(() => local('Roll diameter').querySelector('input')!.value).toBe('4.000 mm');
  expect(local('Uncertainty').querySelector('input')!.value).toBe('1.50 µm');
  expect(field().value).toBe('');
});

test('a side is chosen and no minus typed, in a new entry and in the notebook', async () => {
  shown.open('notebook');
  await userEvent.click(browser.getByRole('button', { name: '+ Stand-off', exact: true }).first());
  await userEvent.fill(field(), '12');
  await userEvent.selectOptions(browser.getByLabelText('Which way'), 'rearward of the datum');
  await userEvent.click(browser.getByRole('button', { name: 'Write it down' }));
  await expect.poll(() => readings().length).toBe(17);
  expect(readings()[16]).toMatchObject({ kind: 'standOff', value: -0.012 });
  flushSync(() => {
    details()[16]!.open = true;
  });
  await expect.poll(() => details()[16]!.querySelector('[data-path="readings[16].value"] input')).toBeTruthy();
  const value = details()[16]!.querySelector<HTMLElement>('[data-path="readings[16].value"]')!;
  expect(value.querySelector('input')!.value).toBe('12.00 µm');
  await userEvent.selectOptions(value.querySelector('select')!, 'noseward of the datum');
  expect(readings()[16]).toMatchObject({ value: 0.012 });
  // A magnitude typed stays on its side; a sign that is typed counts.
  await userEvent.selectOptions(value.querySelector('select')!, 'rearward of the datum');
  await userEvent.fill(value.querySelector('input')!, '20');
  await userEvent.keyboard('{Enter}');
  expect(readings()[16]).toMatchObject({ value: -0.02 });
  await userEvent.fill(value.querySelector('input')!, '+5');
  await userEvent.keyboard('{Enter}');
  expect(readings()[16]).toMatchObject({ value: 0.005 });
});
