import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Design } from '../../src/design/definition.ts';
import { parseDesign } from '../../src/design/parse.ts';
import type { FilmReport } from '../../src/report/film/definition.ts';
import { fitSection } from '../../src/report/fit/section.ts';
import { designWithMeasured } from '../../src/report/measure/withMeasured.ts';
import { solve } from '../../src/report/report.ts';

const folder = new URL('../../assets/designs/', import.meta.url);
const textOf = (file: string) => readFileSync(new URL(file, folder), 'utf8');
const index = JSON.parse(textOf('../demos.json')) as { file: string; title: string; lesson: string }[];

/** A tenth of a micrometre: the demos state their diameters to that, and show their lesson to a micrometre. */
const TENTH = 1e-4;

function designOf(file: string): Design {
  const parsed = parseDesign(textOf(file));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.errors));
  return parsed.design;
}

const films = new Map<string, FilmReport>();
/** Worked out once for all that ask. */
function filmOf(name: string): FilmReport {
  const film = films.get(name) ?? solve(designOf(`${name}.conepair.json`), name, ['film']).film!;
  films.set(name, film);
  return film;
}

function fitOf(name: string) {
  const fit = solve(designOf(`${name}.conepair.json`), name, ['fit']).fit!;
  const seat = (of: string) => fit.seats.find((s) => s.name === of)!;
  return { fit, seat };
}

function near(found: number | null | undefined, wanted: number, within = TENTH) {
  expect(found).toBeTypeOf('number');
  expect(Math.abs(found! - wanted), `${found} is not ${wanted} within ${within}`).toBeLessThanOrEqual(within);
}

describe('the list of demos', () => {
  test('names every design once, by its own title, with a lesson; the one that opens shows the problem', () => {
    expect(index.map((demo) => demo.file).sort()).toEqual(
      readdirSync(folder)
        .filter((name) => name.endsWith('.conepair.json'))
        .sort(),
    );
    expect(index[0]!.file).toBe('steep-first.conepair.json');
    for (const { file, title, lesson } of index) {
      expect(designOf(file).title).toBe(title);
      expect(lesson).toMatch(/^[A-Z].*\.$/);
    }
  });

  test.each(index.map((demo) => demo.file))('%s has all that the screens want', (file) => {
    const design = designOf(file);
    expect(design.notes!.split(/\.(?:\s|$)/).filter((sentence) => sentence !== '').length).toBeGreaterThanOrEqual(2);
    expect([0.75, 1]).toContain(design.adjuster!.pitch);
    expect(design.friction).toBeGreaterThan(0);
    expect(design.play!.indicator).toBeTypeOf('number');
    for (const seat of design.seats) expect(seat.film).toEqual({ target: 0.0025, tolerance: 0.0005 });
  });

  test.each(index.map((demo) => demo.file))('%s stands free of touch as it opens', (file) => {
    for (const seat of solve(designOf(file), file, ['fit']).fit!.seats) expect(seat.leastFilm).toBeGreaterThan(0);
  });
});

describe('each demo shows its lesson', () => {
  test('correct: position 0 gives both films', () => {
    const { fit, seat } = fitOf('correct');
    expect(fit.position).toBe(0);
    for (const name of ['shallow', 'steep']) {
      near(seat(name).leastFilm, 0.0025);
      near(seat(name).greatestFilm, 0.0025);
      near(seat(name).shiftToTarget, 0);
    }
    near(fit.relation!.error, 0);
    near(
      seat('steep').sensitivity! / seat('shallow').sensitivity!,
      Math.sin(Math.PI / 4) / Math.sin(Math.PI / 60),
      1e-6,
    );
  });

  test('steep-first: the steep cone touches, the shallow one is loose by a tenth of travel', () => {
    const { fit, seat } = fitOf('steep-first');
    expect(fit.together).toEqual(['steep']);
    near(fit.firstPosition, -0.004, 1e-9);
    // half the difference of the diameters, square to the line, less what the way to the touch closes
    near(fit.filmsAtFirst.shallow, 0.0082 * Math.cos(Math.PI / 60) - 0.004 * Math.sin(Math.PI / 60), 1e-9);
    expect(fit.filmsAtFirst.shallow).toBeGreaterThan(3 * 0.0025);
    near(fit.relation!.error, -0.1082);
    expect(-fit.relation!.error).toBeGreaterThan(10 * fit.relation!.allowance);
    near(seat('shallow').positionForTarget, -0.1087);
    near(seat('steep').positionForTarget, -0.0005);
  });

  test('shallow-first: the shallow cone touches and holds itself, the steep one stands off', () => {
    const { fit } = fitOf('shallow-first');
    expect(fit.together).toEqual(['shallow']);
    near(fit.firstPosition, -0.0191);
    near(fit.filmsAtFirst.steep, 0.0289);
    near(fit.relation!.error, 0.0852);
    const design = designOf('shallow-first.conepair.json');
    expect(Math.tan((design.seats[0]!.bush.halfAngle * Math.PI) / 180)).toBeLessThan(design.friction!);
  });

  test('half-angle-mismatch: touch at the small end, open at the nose', () => {
    const { fit, seat } = fitOf('half-angle-mismatch');
    const shallow = seat('shallow');
    expect(shallow.contact!.end).toBe('small');
    near(shallow.contact!.station, -25, 1e-9);
    near(shallow.leastFilm, 0.0025);
    near(shallow.leastFilmStation, -25, 1e-9);
    near(shallow.greatestFilm, 0.0111);
    expect(Math.abs(fit.relation!.error)).toBeLessThan(fit.relation!.allowance);
  });

  test('worn-bell-mouth: the measured bush touches in its middle, and gapes at the nose', () => {
    const { seat } = fitOf('worn-bell-mouth');
    const shallow = seat('shallow');
    expect(designOf('worn-bell-mouth.conepair.json').seats[0]!.bush.profile).toHaveLength(9);
    expect(shallow.contact!.end).toBe('middle');
    near(shallow.contact!.station, -14, 1e-9);
    near(shallow.leastFilm, 0.0025);
    near(shallow.greatestFilm, 0.0025 + 0.012);
  });

  test('opposed-cones: a stop both ways, and the end play between', () => {
    const { fit, seat } = fitOf('opposed-cones');
    expect([seat('front').closes, seat('rear').closes]).toEqual(['rearward', 'noseward']);
    expect(fit.together).toEqual(['front']);
    near(fit.firstPosition, -0.0035);
    near(seat('rear').seatPosition, 0.0065);
    near(fit.endPlay, 0.0101);
    near(fit.endPlay, seat('rear').seatPosition! - seat('front').seatPosition!, 1e-12);
    expect(seat('rear').sensitivity).toBeLessThan(0);
    for (const name of ['front', 'rear']) near(seat(name).leastFilm, 0.0025);
  });

  test('rear-bearing: the straight bearing never closes, its film is that of its diameters', () => {
    const { fit, seat } = fitOf('rear-bearing');
    const rear = seat('rear');
    expect(fit.seats).toHaveLength(3);
    expect(rear.closes).toBe('never');
    expect(rear.seatPosition).toBeNull();
    expect(rear.positionForTarget).toBeNull();
    near(rear.leastFilm, 0.0025, 1e-9);
    near(rear.sensitivity, 0, 1e-12);
    near(fit.relation!.error, 0);
    expect(fit.relation!.between).toEqual(['shallow', 'steep']);
  });

  test('notebook: drawn right, but the readings tell that it is not, surer than the tolerances are wide', () => {
    const report = solve(designOf('notebook.conepair.json'), 'notebook');
    const { measure, fit } = report;
    near(fit!.relation!.error, 0);
    expect(measure!.impossible).toEqual([]);
    expect(measure!.disagreeing).toEqual([]);
    expect(measure!.undetermined).toEqual([]);
    expect(measure!.freedom).toBe(16 - 8);
    expect(measure!.probability).toBeGreaterThan(0.05);
    const { value, sigma } = measure!.consequences.relation!;
    expect(Math.abs(value) - 2 * sigma!).toBeGreaterThan(fit!.relation!.allowance);
    // taken into the design, the fit tells the same
    near(fitSection(designWithMeasured(designOf('notebook.conepair.json'), measure!)).relation!.error, value, 1e-12);
  });

  test.each(['steep-first', 'correct', 'opposed-cones'])(
    '%s runs, and still does when it is warm',
    { timeout: 30_000 },
    (name) => {
      const film = filmOf(name);
      expect(film.warmUpEnd).toBe('time');
      expect(film.steady!.leastFilm).toBeGreaterThan(3 * Math.hypot(0.0001, 0.0002));
      expect(film.steady!.journal).toBeGreaterThan(22);
    },
  );

  test('steep-first: the spindle lies aslant in its loose shallow seat, and its nose is far less stiff than in the pair as it should be', {
    timeout: 30_000,
  }, () => {
    const upward = (name: string) => filmOf(name).nose!.stiffness[1]![1]!;
    expect(upward('steep-first')).toBeLessThan(0.8 * upward('correct'));
  });
});
