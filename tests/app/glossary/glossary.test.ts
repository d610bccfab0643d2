import { describe, expect, test } from 'vitest';
import { GLOSSARY } from '../../../src/app/glossary/entries.ts';
import { entryOf, piecesOf } from '../../../src/app/glossary/find.ts';
import { wordsOfScreens } from './wordsOfScreens.ts';

const ENTRIES = GLOSSARY.flatMap(({ entries }) => entries);
const FORMS = ENTRIES.flatMap(({ word, forms = [] }) => [word, ...forms]);
const SAID = wordsOfScreens();

const stands = (word: string) => {
  const found = new RegExp(`(?<![\\p{L}\\d-])${word}(?![\\p{L}-])`, 'iu');
  return SAID.some((text) => found.test(text));
};

/** What somebody new to the trade would ask about, were it on a screen. */
const TRADE = [
  ...['journal', 'bush', 'spindle', 'headstock', 'nose', 'noseward', 'rearward', 'seat', 'cone', 'taper', 'datum'],
  ...['station', 'half angle', 'steep', 'shallow', 'adjuster', 'pitch', 'spacer', 'shoulder', 'quill', 'collet'],
  ...['film', 'least film', 'thinnest film', 'position', 'seat position', 'first touch', 'touches first', 'relation'],
  ...['tolerance', 'interference', 'clearance', 'end play', 'shake', 'self-holding', 'pushed home', 'marking blue'],
  ...['blue', 'print', 'profile', 'lobes', 'run-out', 'barrelled', 'hollow', 'burr', 'crowned', 'bell-mouthed'],
  ...['reading', 'gauge', 'micrometer', 'micrometre', 'indicator', 'rolls', 'ball', 'sine bar', 'stack', 'block set'],
  ...['gauge blocks', 'stand-off', 'straightness', 'residual', 'vee block', 'surface plate', 'bore'],
  ...['belief', 'believed', 'doubt', 'odds', 'standard uncertainty', 'chi-square', 'spread', 'scatter'],
  ...['load', 'thrust', 'pressure', 'viscosity', 'ISO VG', 'friction', 'roughness', 'full film', 'whirl', 'stiffness'],
  ...['damping', 'warm-up', 'growth', 'expansion', 'seizes', 'supply groove', 'tilt', 'cavitation', 'eccentricity'],
  ...['stock', 'cleanup', 'cross feed', 'axial feed', 'dial', 'division', 'pass', 'slide', 'tailstock', 'set-up'],
  ...['trial', 'trial assembly', 'lap', 'lapping', 'grit', 'case', 'wear', 'spark out', 'dress', 'dresser', 'infeed'],
  ...['top slide', 'cross slide', 'chuck', 'mandrel', 'centres', 'arbor', 'flank', 'play', 'hone'],
];

describe('the glossary', () => {
  test('has every trade word that a screen says', () => {
    expect(TRADE.filter((word) => stands(word) && !entryOf(word))).toEqual([]);
  });

  test('has no word that no screen says', () => {
    const unsaid = ENTRIES.filter(({ word, forms = [] }) => ![word, ...forms].some(stands));
    expect(unsaid.map(({ word }) => word)).toEqual([]);
  });

  test('has every word once', () => {
    const small = FORMS.map((form) => form.toLowerCase());
    expect(small.filter((form, i) => small.indexOf(form) !== i)).toEqual([]);
  });

  test('explains in one to three short sentences, in units of nobody', () => {
    for (const { word, meaning } of ENTRIES) {
      const sentences = meaning.split(/(?<=\.) /);
      expect(sentences.length, word).toBeLessThanOrEqual(3);
      expect(meaning, word).toMatch(/^[A-Z].*\.$/);
      expect(meaning.length, word).toBeLessThanOrEqual(190);
      expect(meaning, word).not.toMatch(/\d ?(mm|µm|in\b|tenths|")/);
    }
  });
});

describe('a sentence', () => {
  const marked = (sentence: string) =>
    piecesOf(sentence).flatMap((piece) => (typeof piece === 'string' ? [] : [piece]));

  test('stays as it is, in pieces', () => {
    for (const sentence of SAID)
      expect(
        piecesOf(sentence)
          .map((piece) => (typeof piece === 'string' ? piece : piece.text))
          .join(''),
      ).toBe(sentence);
  });

  test('has each word where it stands first, and as long as it goes', () => {
    const found = marked('Steep touches first; the steep film opens, the thinnest film is 2 µm.');
    expect(found.map(({ text }) => text)).toEqual(['Steep', 'touches first', 'film', 'thinnest film']);
  });

  test('has a form by its word', () => {
    expect(marked('Both bushes lapped.').map(({ entry }) => entry.word)).toEqual(['bush', 'lapping']);
  });

  test('leaves a word within another alone', () => {
    expect(marked('Filmy seating, journalist, post-trial, pass-through, 3µm')).toEqual([]);
  });
});
