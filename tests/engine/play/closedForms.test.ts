/** Seating, shake and end play where the answer can be written down. mm and degrees in, SI compared. */

import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { fit as centredFit } from '../../../src/engine/contact/fit.ts';
import { NOSEWARD, REARWARD, seat } from '../../../src/engine/play/seating.ts';
import { endPlay, shakeAt } from '../../../src/engine/play/shake.ts';
import { type Motion, pushAt } from '../../../src/engine/spindle/pose.ts';
import { spindleOf } from '../../../src/engine/spindle/rigid.ts';
import { toSeats } from '../../../src/report/convert.ts';
import { ALL, coneSeat, spindleDesign, spindleFrom } from './designs.ts';

// a busy machine is no fault
vi.setConfig({ testTimeout: 60_000 });

const rad = (degrees: number) => (degrees * Math.PI) / 180;
const tan = (degrees: number) => Math.tan(rad(degrees));
/** 1e-9 mm */
const PICO = 1e-12;
const near = (found: number, wanted: number, within = PICO) => {
  if (!(Math.abs(found - wanted) <= within)) expect.fail(`${found} is not ${wanted} within ${within}`);
};

function solved<T extends { status: string }>(verdict: T): Extract<T, { status: 'solved' }> {
  expect(verdict.status).toBe('solved');
  return verdict as Extract<T, { status: 'solved' }>;
}

describe('shake', () => {
  // A journal of diameter D - C in a sleeve of diameter D and length L from Z₁ to Z₂: pulled at S beyond Z₂ it bears at
  // Z₂ on the near side and at Z₁ on the far one, its axis C/2 off to either side: shake = C·(2·(S - Z₁)/L - 1).
  it.each([
    [0.01, -40, 0, 25],
    [0.003, -12, -2, 60],
    [0.02, 5, 9, 9],
  ])(
    'of a straight journal with the clearance %f in a sleeve from %f to %f, felt at %f',
    (clearance, from, to, station) => {
      const sleeve = [coneSeat('plain', 0, 20 - clearance, 20, [from, to], [from - 3, to + 3])];
      const free = shakeAt(spindleOf(sleeve, ALL), 0, { station: station / 1000, direction: 0.7 });
      near(solved(free).total, (clearance / 1000) * ((2 * (station - from)) / (to - from) - 1));
      const parallel = shakeAt(spindleOf(sleeve, ['x', 'y']), 0, { station: station / 1000, direction: 0.7 });
      near(solved(parallel).total, clearance / 1000);
      const { contacts } = solved(free).along;
      const lever = (station - from) / (to - from);
      // at the very end of the sleeve one contact carries it all
      const shares = [lever - 1, lever].filter((share) => share > 0);
      expect(contacts.length).toBe(shares.length);
      contacts.forEach((c, i) => {
        expect(c.share).toBeCloseTo(shares[i]!, 9);
      });
    },
  );

  // A cone p noseward of its seat has the film p·sin a, a sideways play of p·tan a, and bears where its normals meet
  // the axis, at Zn = Z + r·tan a. Its bush is L long: Zn₂ - Zn₁ = L/cos² a.
  it.each([
    [3, -25, -0.5, 0.02, 30],
    [30, -4, 0, 0.01, 20],
    [45, 1, 4, 0.03, 40],
  ])('of a cone of %f° from %f to %f standing %f off, felt at %f', (angle, from, to, off, station) => {
    const cone = [coneSeat('cone', angle, 22, 22, [from, to], [from - 1, to + 1])];
    const found = solved(shakeAt(spindleOf(cone, ALL), off / 1000, { station: station / 1000, direction: 2 }));
    const [rear, nose] = [from, to].map((z) => z + (11 + z * tan(angle)) * tan(angle)) as [number, number];
    const play = (off / 1000) * tan(angle);
    const beyond =
      station > nose ? (2 * (station - rear)) / (nose - rear) - 1 : (2 * (nose - station)) / (nose - rear) - 1;
    near(found.total, 2 * play * Math.max(1, beyond));
  });

  it('gains per film what its contacts share', () => {
    const film = 1e-9;
    const seats = (more: number) => [
      coneSeat('shallow', 3, 22, 22.006, [-25, -0.5], [-27, 1], {
        journal: [{ count: 3, amplitude: 0.0004, phase: 30 }],
      }),
      coneSeat('rear', 0, 19.99, 20 + more, [-90, -70], [-95, -65]),
    ];
    const shake = (more: number) =>
      solved(shakeAt(spindleOf(seats(more), ALL), 0.01e-3, { station: 0.03, direction: 0.4 }));
    const [one, other] = [shake(0), shake((2 * film) / 1e-3)];
    const share = [...one.along.contacts, ...one.back.contacts]
      .filter((c) => c.seat === 'rear')
      .reduce((sum, c) => sum + c.share, 0);
    expect(share).toBeGreaterThan(0);
    expect((other.total - one.total) / film).toBeCloseTo(share, 2);
  });

  it('of a lobed journal depends on the direction: least across two lobes, most between', () => {
    const oval = [
      coneSeat('plain', 0, 19.98, 20, [-20, 0], [-25, 5], { journal: [{ count: 2, amplitude: 0.002, phase: 0 }] }),
    ];
    const spindle = spindleOf(oval, ['x', 'y']);
    near(solved(shakeAt(spindle, 0, { station: 0, direction: 0 })).total, 2 * (0.01e-3 - 0.002e-3));
    // Along y the crests are aside: x = 0, film 10 + 2 µm at the flat, so long as the flat is sharper than the bush:
    // 4·2 µm < 12 µm.
    near(solved(shakeAt(spindle, 0, { station: 0, direction: Math.PI / 2 })).total, 2 * (0.01e-3 + 0.002e-3));
  });
});

describe('seating', () => {
  it('of true rounds pushed straight home is first touch, to 1e-9 mm', () => {
    let seated = 0;
    fc.assert(
      fc.property(spindleDesign({ lobed: false, profiled: true }), (design) => {
        const centred = centredFit(toSeats(design), 0);
        const found = seat(spindleFrom(design), REARWARD);
        if (found.status === 'infeasible') return;
        seated++;
        near(solved(found).pose.z, centred.firstPosition!);
        expect(new Set(solved(found).contacts.map((c) => c.seat))).toEqual(new Set(centred.together));
        expect(solved(found).contacts.every((c) => c.ring)).toBe(true);
      }),
      { seed: 5, numRuns: 300 },
    );
    expect(seated).toBeGreaterThan(200);
  });

  it.each([2, 3, 5, 12])('of a journal with %i lobes: amplitude/sin a higher, on its crests, equal shares', (count) => {
    const cone = [
      coneSeat('cone', 20, 30, 30, [-10, 0], [-12, 2], { journal: [{ count, amplitude: 0.001, phase: 37 }] }),
    ];
    const { pose, contacts } = solved(seat(spindleOf(cone, ALL), REARWARD));
    near(pose.z, 1e-6 / Math.sin(rad(20)));
    near(pose.x, 0);
    expect(contacts.length).toBe(2 * count);
    for (const c of contacts) {
      expect(c.share).toBeCloseTo(1 / (2 * count * Math.sin(rad(20))), 9);
      expect(Math.abs(Math.sin((count * (c.angle - rad(37))) / 2))).toBeLessThan(1e-6);
    }
  });

  it('one lobe is a shift of the axis and nothing else', () => {
    const cone = [
      coneSeat('cone', 20, 30, 30, [-10, 0], [-12, 2], { bush: [{ count: 1, amplitude: 0.001, phase: 90 }] }),
    ];
    const { pose } = solved(seat(spindleOf(cone, ALL), REARWARD));
    near(pose.z, 0);
    near(pose.y, -1e-6 / Math.cos(rad(20)));
    near(pose.x, 0);
  });

  it('lobes of journal and bush that match need no room; crest on crest they need both', () => {
    const lobe = (phase: number) => [{ count: 3, amplitude: 0.001, phase }];
    const z = (phase: number) =>
      solved(
        seat(
          spindleOf([coneSeat('cone', 20, 30, 30, [-10, 0], [-12, 2], { journal: lobe(0), bush: lobe(phase) })], ALL),
          REARWARD,
        ),
      ).pose.z;
    near(z(60), 0);
    near(z(0), 2e-6 / Math.sin(rad(20)));
  });

  // Without friction a cone carries a side force of no more than cos a/sin a times the push home.
  it.each([10, 30, 60])('a cone of %i° is pulled out by a side force greater than the push over tan a', (angle) => {
    const cone = [coneSeat('cone', angle, 40, 40, [-6, 0], [-7, 1])];
    const middle = (-3 + (20 - 3 * tan(angle)) * tan(angle)) / 1000;
    const pushed = (side: number) => seat(spindleOf(cone, ALL), pushAt(middle, { y: side, z: -1 })).status;
    expect(pushed(0.999 / tan(angle))).toBe('solved');
    expect(pushed(1.001 / tan(angle))).toBe('unbounded');
  });

  it('a push of another size or sense scales the shares and turns the angles, not the pose', () => {
    const cone = [
      coneSeat('cone', 20, 30, 30, [-10, 0], [-12, 2], { journal: [{ count: 3, amplitude: 0.001, phase: 10 }] }),
      coneSeat('plain', 0, 19.99, 20, [-60, -40]),
    ];
    const spindle = spindleOf(cone, ALL);
    const one = solved(seat(spindle, pushAt(0.02, { x: 0.3, y: 0.1, z: -1 })));
    const ten = solved(seat(spindle, pushAt(0.02, { x: 3, y: 1, z: -10 })));
    for (const motion of Object.keys(one.pose) as Motion[]) near(ten.pose[motion], one.pose[motion], 1e-10);
    one.contacts.forEach((c, i) => {
      expect(ten.contacts[i]!.share / 10).toBeCloseTo(c.share, 8);
    });
  });
});

describe('end play', () => {
  it('of opposed true cones is that of the centred journal: clearance over both tangents', () => {
    const opposed = [
      coneSeat('front', 45, 23.99, 24, [0, 4], [-1, 5]),
      coneSeat('rear', -22.5, 23.996, 24, [-66, -60], [-68, -58]),
    ];
    const { total, rear, nose } = endPlay(spindleOf(opposed, ALL));
    near(total!, (0.005 / tan(45) + 0.002 / tan(22.5)) / 1000);
    near(solved(rear).pose.z, -0.005e-3);
    near(solved(nose).pose.z, 0.002e-3 / tan(22.5));
    near(total!, centredFit(opposed, 0).endPlay!);
  });

  it('is none where one way is open, and the stops that overlap are an interference', () => {
    const one = endPlay(spindleOf([coneSeat('front', 45, 23.99, 24, [0, 4])], ALL));
    expect(one.total).toBeNull();
    expect(one.nose).toMatchObject({ status: 'unbounded', motion: { z: 1 } });
    const tight = seat(
      spindleOf(
        [coneSeat('front', 45, 24.002, 24, [0, 4], [-1, 5]), coneSeat('rear', -45, 24.002, 24, [-66, -60], [-68, -58])],
        ALL,
      ),
      NOSEWARD,
    );
    expect(tight.status).toBe('infeasible');
    // 1 µm on the radius at either end: shared evenly it is 1 µm·cos 45° normal to each cone.
    if (tight.status === 'infeasible') near(tight.interference, 1e-6 * Math.cos(rad(45)), 1e-11);
  });
});

describe('what cannot be answered is told apart', () => {
  const straight = coneSeat('plain', 0, 19.99, 20, [-20, 0]);

  it('nothing restrains a straight journal axially', () => {
    expect(seat(spindleOf([straight], ALL), REARWARD)).toMatchObject({ status: 'unbounded', motion: { z: -1 } });
  });

  it('parts that do not overlap restrain nothing', () => {
    expect(
      shakeAt(spindleOf([coneSeat('gone', 3, 22, 22, [-25, 0], [100, 120])], ALL), 0, { station: 0.03, direction: 0 }),
    ).toMatchObject({ status: 'unbounded' });
  });

  it('a journal too large for its bush: by how much, at best', () => {
    const found = shakeAt(spindleOf([coneSeat('plain', 0, 20.004, 20, [-20, 0])], ALL), 0, {
      station: 0.03,
      direction: 0,
    });
    expect(found.status).toBe('infeasible');
    if (found.status === 'infeasible') near(found.interference, 2e-6, 1e-11);
  });

  it('a perfect fit is a fit: no shake, no interference', () => {
    near(
      solved(shakeAt(spindleOf([coneSeat('plain', 0, 20, 20, [-20, 0])], ALL), 0, { station: 0.03, direction: 0 }))
        .total,
      0,
    );
  });

  it.each([1e-10, 3e-10, 6e-10])(
    'a journal larger by %s mm, which is a rounding, still goes in, and has no shake',
    (more) => {
      for (const angle of [0, 7]) {
        const tight = [
          coneSeat('front', angle, 22 + more, 22, [-20, 0], [-23, 3]),
          coneSeat('back', angle, 22 + more, 22, [-50, -30], [-53, -27]),
        ];
        near(solved(shakeAt(spindleOf(tight, ALL), 0, { station: 0.03, direction: 0.7 })).total, 0);
      }
    },
  );

  it('a measured station a rounding from the end of its line is that end', () => {
    const seats = toSeats({
      conepair: 1,
      seats: [
        {
          name: 'cone',
          journal: {
            halfAngle: 4.262551724719021,
            diameter: 22,
            station: -25,
            from: -25,
            to: -5.395219516754145,
            profile: [
              [-25, 0],
              [-5.395219516754146, 0],
            ],
          },
          bush: { halfAngle: 4.262551724719021, diameter: 22.004, station: -25, from: -25, to: -0.5 },
        },
      ],
    });
    near(solved(seat(spindleOf(seats, ALL), REARWARD)).pose.z, -0.002e-3 / tan(4.262551724719021));
    expect(centredFit(seats, 0).seats[0]!.leastFilm).toBeCloseTo(0.002e-3 * Math.cos(rad(4.262551724719021)), 12);
  });

  it('no motion free: nothing moves and nothing is said to bear', () => {
    const found = solved(shakeAt(spindleOf([straight], []), 0, { station: 0.03, direction: 0 }));
    expect(found.total).toBe(0);
    expect(found.along.contacts).toEqual([]);
  });

  it('locked motions stay at nothing', () => {
    const { pose } = solved(
      seat(
        spindleOf(
          [coneSeat('cone', 20, 30, 30, [-10, 0], [-12, 2], { bush: [{ count: 1, amplitude: 0.001, phase: 90 }] })],
          ['x'],
        ),
        REARWARD,
      ),
    );
    expect([pose.y, pose.tiltX, pose.tiltY]).toEqual([0, 0, 0]);
    near(pose.z, 1e-6 / Math.sin(rad(20)));
  });
});
