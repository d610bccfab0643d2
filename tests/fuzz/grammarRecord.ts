/** The record of a job at random: days, hands, stages, notes, photographs, and the tools of the shop. */
import fc from 'fast-check';
import { perhaps, sized } from './arbitrary.ts';

const words = (maxLength: number) =>
  fc
    .oneof(fc.constantFrom('=1+1', "'=A1", '</script>', '日本語 🚲'), fc.string({ minLength: 1, maxLength }))
    .filter((text) => /\S/.test(text));

export const entered = fc.record({
  date: perhaps(
    fc.constantFrom('2026-03-31', '2024-02-29', '2026-03-31T14:30', '2026-03-31T14:30:05.5+01:00', '0001-01-01'),
  ),
  by: perhaps(words(60)),
  stage: perhaps(fc.oneof(fc.constantFrom('received', 'pressed', 'ground', 'lapped'), words(40))),
  note: perhaps(fc.string({ maxLength: 60 })),
});

export const record = fc.array(
  fc
    .record({ told: entered, photograph: perhaps(fc.constantFrom('1', 'a-B-9')) })
    .map(({ told, photograph }) => ({ ...told, photograph, note: photograph === undefined ? 'seen' : told.note })),
  { maxLength: 4 },
);

const sizes = fc.array(sized(1e-3, 100), { minLength: 1, maxLength: 8 });
export const shop = fc.record({
  tools: perhaps(fc.constantFrom('metric', 'inch')),
  balls: perhaps(sizes),
  rolls: perhaps(sizes),
});
