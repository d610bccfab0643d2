/**
 * What a plan advises: the choice of two plans, the doubt it goes by, whether the spindle runs so; files that once were
 * advised wrongly.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import type { Design } from '../../../src/design/definition.ts';
import { parseDesign } from '../../../src/design/parse.ts';
import { doubtOf } from '../../../src/report/cut/doubt.ts';
import { leftVerdict } from '../../../src/report/cut/leftVerdict.ts';
import { takenSigma } from '../../../src/report/cut/metalDoubt.ts';
import { filmToAdd, runsAsPlanned, withFilmsAdded } from '../../../src/report/cut/runsAsPlanned.ts';
import { cutSection } from '../../../src/report/cut/section.ts';
import { cutVerdict } from '../../../src/report/cut/verdict.ts';
import { designWithCut } from '../../../src/report/cut/withCut.ts';
import { filmSection } from '../../../src/report/film/section.ts';
import { fitSection } from '../../../src/report/fit/section.ts';
import { measureSection } from '../../../src/report/measure/section.ts';

function file(url: URL): Design {
  const parsed = parseDesign(readFileSync(url, 'utf8'));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.errors));
  return parsed.design;
}
const demo = (name: string) => file(new URL(`../../../assets/designs/${name}.conepair.json`, import.meta.url));
const regression = (name: string) => file(new URL(`../../regressions/${name}.conepair.json`, import.meta.url));
const TENTH = 0.00254;

describe('a rear seat that is straight, measured a little tapered', () => {
  const out = regression('rear-film-out-of-reach');
  const within = regression('rear-film-nearly-reached');

  it('its film, out of reach by a hundredth of a micrometre, costs no metal', () => {
    const [a, b] = [out, within].map((design) => cutSection(design)!) as [
      ReturnType<typeof cutSection> & object,
      ReturnType<typeof cutSection> & object,
    ];
    expect(a.total).toBeCloseTo(0.05137, 4);
    expect(a.total).toBeCloseTo(b.total, 9);
    for (const { films } of [a, b]) {
      expect(films.shallow).toBeCloseTo(TENTH, 8);
      expect(films.steep).toBeCloseTo(TENTH, 8);
    }
    // with less room it does not go to its limit either
    const tight = cutSection({
      ...out,
      cut: { ...out.cut!, allow: out.cut!.allow.map((entry) => ({ ...entry, limit: 0.0762 })) },
    })!;
    expect(tight.total).toBeCloseTo(a.total, 9);
  });

  it('of a hundredth of a micrometre nobody speaks, and nothing is to be let go for it', () => {
    const cut = cutSection(out)!;
    const { headline, sentences } = cutVerdict(out, cut, 'inch');
    const text = [headline, ...sentences].join(' ');
    expect(text).not.toMatch(/\brear\b/);
    expect(text).not.toMatch(/What stands in the way/);
    expect(cut.limits).toEqual([]);
  });
});

describe('a trial that clashes', () => {
  const tried = regression('trial-clashes');
  const cut = cutSection(tried)!;

  it('leaves nothing safe to take, and names what to read again', () => {
    expect(cut.trials![0]!.clashes![0]).toMatchObject({ trial: 1, what: 'shake' });
    for (const { safe } of [...cut.remaining!.steps, ...cut.remaining!.faces]) expect(safe).toBe(0);
    const { tone, headline, sentences } = leftVerdict(tried, cut, 'inch')!;
    expect(tone).toBe('stop');
    expect(headline).toMatch(
      /^The shake of trial 1 does not go with the rest: 4\.60 tenths was read, and parts as the rest tells would shake by 7\.\d\d tenths, .* Read it again\.$/,
    );
    expect(sentences).toContain('Until that is settled nothing is safe to take.');
  });

  it('says what the rest tells: how far it is short, and what that is in metal', () => {
    const told = leftVerdict(tried, cut, 'inch')!.sentences.find((s) => s.startsWith('The rest, without the shake'))!;
    expect(told).toMatch(
      /[Yy]ou are 5\.\d\d tenths short along the axis.* 4 \(0 to 2\d\) tenths off the steep journal\./,
    );
    expect(cut.without!.remaining.steps[0]!.normal / TENTH).toBeCloseTo(4.1, 0);
    expect(leftVerdict(tried, cut, 'inch')!.sentences.join(' ')).toMatch(
      /Most likely 17\.\d\d tenths only came off the steep journal before trial 1, not 20\.12 tenths: less came off than was read off the dial/,
    );
  });

  it('without it what is safe is no more than what is left', () => {
    const { shake: _, ...rest } = tried.cut!.trials![0]!;
    const calm = cutSection({ ...tried, cut: { ...tried.cut!, trials: [rest] } })!;
    for (const { normal, safe } of calm.remaining!.steps) {
      expect(safe).toBeLessThanOrEqual(normal);
      expect(normal).toBeLessThan(0.02);
    }
  });
});

describe('two plans', () => {
  const base = demo('steep-first');
  const cut = cutSection(base)!;
  const [dead, least] = cut.aims as [(typeof cut.aims)[number], (typeof cut.aims)[number]];

  it('are offered, the films just as wanted or the least stock, and the one chosen is the plan', () => {
    expect([dead.aim, least.aim]).toEqual(['target', 'tolerance']);
    expect([dead.chosen, least.chosen]).toEqual([true, false]);
    expect(dead.total).toBe(cut.total);
    expect(least.total).toBeLessThan(dead.total);
    const chosen = { ...base, cut: { ...base.cut!, prefer: { aim: 'tolerance' as const } } };
    const other = cutSection(chosen)!;
    expect(other.total).toBe(least.total);
    expect(other.aims.map(({ chosen }) => chosen)).toEqual([false, true]);
    for (const { name, film } of base.seats)
      if (film) expect(Math.abs(other.films[name]! - film.target)).toBeLessThan(0.8 * film.tolerance! + 1e-9);
    expect(cutVerdict(chosen, other, 'metric').headline).toMatch(
      /^70\.73 µm off the steep journal .* brings every film within its tolerance, with the least stock\.$/,
    );
  });

  it('the trade between them falls evenly from the one to the other', () => {
    expect(cut.trade[0]).toEqual({ share: 0, total: dead.total });
    expect(cut.trade.at(-1)!.total).toBeCloseTo(least.total, 9);
    for (const [i, { total }] of cut.trade.entries()) if (i > 0) expect(total).toBeLessThan(cut.trade[i - 1]!.total);
  });
});

describe('the doubt of the films', () => {
  const read = demo('notebook');
  const measured = measureSection(read)!;

  it('is the notebook’s own where there is one', () => {
    const {
      before: { covariance, mean },
      from,
    } = doubtOf(read);
    const [first] = read.seats;
    const own = measured.consequences.films[first!.name]!;
    expect(from[0]).toBe('readings');
    expect(Math.sqrt(covariance[0]![0]!) * 1000).toBeCloseTo(own.sigma!, 12);
    // and what is most likely is what was read, not what is drawn
    const drawn = fitSection(read).seats[0]!.leastFilm!;
    expect(Math.abs(own.value - drawn)).toBeGreaterThan(own.sigma!);
    expect(mean[0]! * 1000).toBeCloseTo(own.value - drawn, 12);
    expect(covariance[0]![1]).toBe(covariance[1]![0]);
  });

  it('is what is stated where nothing was read, or else the default', () => {
    const base = demo('steep-first');
    const stated = doubtOf({ ...base, cut: { allow: [], doubt: 0.002 } });
    expect(stated).toMatchObject({ from: ['stated', 'stated'] });
    expect(Math.sqrt(stated.before.covariance[0]![0]!)).toBeCloseTo(2e-6, 12);
    expect(Math.sqrt(doubtOf({ ...base, cut: { allow: [] } }).before.covariance[1]![1]!)).toBeCloseTo(5e-6, 12);
  });

  it('of stock read off a dial: a twentieth of it and half a division, square to the surface', () => {
    expect(takenSigma({ machine: { division: 0.01 } }, 0, 60)).toBeCloseTo(0.0025, 12);
    expect(takenSigma({ machine: { division: 0.01, dial: 'diameter' } }, 0, 0)).toBeCloseTo(0.0025, 12);
    expect(takenSigma({ machine: { division: 0.01 } }, 0.08, 60)).toBeCloseTo(Math.hypot(0.004, 0.0025), 12);
  });
});

describe('whether it runs as planned', () => {
  const base = demo('steep-first');
  const made = designWithCut(base, cutSection(base)!);
  const under = (thrust: number): Design => ({
    ...made,
    run: { speed: 600, oil: { viscosity: 0.0086 }, load: { x: 0, y: -100, z: -thrust, station: 30 } },
  });

  it('a plan on which metal runs on metal is not to be cut to, and the ways out are told', () => {
    const heavy = under(2000);
    const film = filmSection(heavy)!;
    const bad = runsAsPlanned(heavy, film, true, 'metric')!;
    expect(bad.tone).toBe('stop');
    expect(bad.headline).toMatch(/^Do not cut to this plan yet\. With these films it must not run: [a-z]/);
    expect(bad.sentences[0]).toMatch(/other oil, more area on the steep seat, a pocket or a thrust stop/);
    expect(runsAsPlanned(heavy, film, false, 'metric')!.headline).toMatch(/^With these films it must not run/);
  });

  it('where it runs on oil nothing is said', () => {
    const film = filmSection(under(0))!;
    expect(runsAsPlanned(under(0), { ...film, status: 'found' }, true, 'metric')?.tone ?? 'good').not.toBe('stop');
  });

  test('films to want: inside what works, in the middle where there is little room, none where it runs', () => {
    const works = (from: number, to: number) => ({ from, to, openBelow: false, openAbove: false });
    expect(filmToAdd(made, null)).toBeNull();
    expect(filmToAdd(made, works(-0.001, 0.002))).toBe(0);
    expect(filmToAdd(made, works(0.001, 0.01))).toBeCloseTo(0.0015, 9);
    expect(filmToAdd(made, works(0.001, 0.0012))).toBeCloseTo(0.0011, 9);
    expect(filmToAdd(made, works(-0.004, -0.001))).toBeCloseTo(-0.0015, 9);
    expect(withFilmsAdded(made, 0.0015).seats.map(({ film }) => film!.target)).toEqual([0.004, 0.004]);
  });
});
