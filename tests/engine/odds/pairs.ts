/** Pairs of our own making for the tests of the odds. */
import { positionForFilm, type SeatInput, seatLines } from '../../../src/engine/contact/fit.ts';
import { mixed } from '../../../src/engine/odds/sobol.ts';

export const degrees = (angle: number) => (angle * Math.PI) / 180;
export const surface = (angle: number, diameter: number, station: number, from: number, to: number) => ({
  halfAngle: degrees(angle),
  radius: diameter / 2e3,
  station: station / 1e3,
  from: from / 1e3,
  to: to / 1e3,
  profile: [] as (readonly [number, number])[],
});

/** A shallow cone and a steep one, both with 2.5 ± 0.5 µm at position 0. */
export const doubleCone = (): SeatInput[] => [
  {
    name: 'shallow',
    journal: surface(3, 22, 0, -26, 0),
    bush: surface(3, 22.005007, 0, -25, -0.5),
    target: 2.5e-6,
    tolerance: 5e-7,
  },
  {
    name: 'steep',
    journal: surface(45, 24, 0, 0, 5),
    bush: surface(45, 24.007071, 0, 0.2, 4.8),
    target: 2.5e-6,
    tolerance: 5e-7,
  },
];

/** Whole numbers mixed into fractions: the same every day. */
export function chance(seed: number): () => number {
  let n = mixed(seed);
  return () => {
    n = (n + 0x3c6ef372) | 0;
    return ((mixed(n) >>> 0) + 0.5) / 2 ** 32;
  };
}

/**
 * A double cone anywhere near: half angles, ends, diameters; the third seat straight, the last one closing noseward.
 */
export function anyPair(random: () => number, seats: number): SeatInput[] {
  const within = (low: number, high: number) => low + (high - low) * random();
  return Array.from({ length: seats }, (_, i): SeatInput => {
    const angle = i === 2 ? 0 : i === 3 ? -within(2, 45) : within(1.5, 45);
    const diameter = within(15, 40);
    const from = within(-30, -5);
    const to = within(2, 20);
    const off = () => (i === 2 ? 0 : within(-0.02, 0.02));
    const tolerance = within(2e-7, 1e-6);
    return {
      name: `${i}`,
      journal: surface(angle + off(), diameter + 60, within(-5, 5), from, to),
      bush: surface(
        angle + off(),
        diameter + 60 + (i === 2 ? 0.03 : within(0.004, 0.02)),
        within(-5, 5),
        from + within(-2, 2),
        to + within(-2, 2),
      ),
      target: within(1e-6, 4e-6),
      tolerance,
    };
  });
}

/** The same with every bush moved so that its film is had within 15 µm of position 0. */
export const inStep = (seats: readonly SeatInput[], random: () => number): SeatInput[] =>
  seats.map((seat) => {
    const found = positionForFilm(seatLines(seat), seat.target!);
    const by = (random() - 0.5) * 3e-5 - (found ?? 0);
    const { bush } = seat;
    return { ...seat, bush: { ...bush, station: bush.station + by, from: bush.from + by, to: bush.to + by } };
  });
