/** The camera: eased from view to view, filling the picture, turned by keys; and the opening of the pair with it. */
import { useFrame, useThree } from '@react-three/fiber';
import { type RefObject, useCallback, useEffect, useImperativeHandle, useRef } from 'react';
import { type PerspectiveCamera, Spherical, Vector3 } from 'three';
import { radians } from '../../../report/convert.ts';
import { useLatest } from '../../state/useLatest.ts';
import type { Frame } from '../revolve.ts';
import type { Controls } from '../sceneProps.ts';
import { type Disc, framing, type View, wayTo } from './camera.ts';
import type { Look } from './look.ts';
import type { Opening, Staged } from './staged.ts';

/** How the keyboard moves the camera. */
export interface Turned {
  /** Angles (rad) to the right and upward round the pair, and how many times closer. */
  turn(across: number, up: number, closer: number): void;
}

export const NEAREST = 0.6;
export const FURTHEST = 20;
/** Of one view into another, ms. */
const EASE = 500;
/** rad: so far turned it is another view; and a cut is looked at no more. */
const ANOTHER = 0.02;
const UNFACED = radians(60);
/** Left free above and below the pair, and beside it, where its ends are named; between lines of the hatching: px. */
const MARGIN = { up: 18, across: 40 };
const HATCH = 8;

export interface Watched {
  view: { name: View };
  frame: Frame;
  /** from which end a three-quarter view looks */
  side: 1 | -1;
  /** where the view from the nose cuts, scene lengths */
  cut: number;
  /** what is to fill the picture; in a cut what stands there */
  discs(cut: number | null): readonly Disc[];
  /** of the bush, degrees, in the other views */
  sector: number;
  staged: Staged;
  /** less motion is wanted */
  still: boolean;
  /** px at the top that labels take */
  band: number;
  controls: Controls;
  turned: RefObject<Turned | null>;
  /** A hand has turned the pair out of its view; out of the cut too where that is no longer faced. */
  onTurned(cut: boolean): void;
  look: Look;
}

interface Stand {
  at: Spherical;
  /** of what is looked at, along the axis */
  target: number;
  /** middle of the picture from there, to the right and upward: tangents */
  middle: readonly [across: number, up: number];
  opening: Opening;
}

export function useCamera(watched: Watched): void {
  const { view, frame, controls, staged, sector, turned, band } = watched;
  const get = useThree((state) => state.get);
  const size = useThree((state) => state.size);
  const latest = useLatest(watched);
  const ease = useRef<{ from: Stand; to: Stand; begun: number | null } | null>(null);
  const last = useRef<Vector3 | null>(null);
  const shift = useRef<readonly [number, number]>([0, 0]);

  const stand = useCallback(
    ({ at, target, middle, opening }: Stand) => {
      const { camera, invalidate, size: now } = get();
      shift.current = middle;
      offset(camera as PerspectiveCamera, now, latest.current.band, middle);
      camera.position.setFromSpherical(at);
      camera.position.x += target;
      camera.lookAt(target, 0, 0);
      controls.current?.target.set(target, 0, 0);
      controls.current?.update();
      staged.set(opening);
      last.current = camera.position.clone();
      invalidate();
    },
    [get, controls, staged],
  );

  const go = useCallback(
    (eased: boolean) => {
      const { fov } = get().camera as PerspectiveCamera;
      const to = standOf(latest.current, fov, get().size);
      latest.current.look.shared.hatch.value = HATCH * to.dot;
      if (!eased || last.current === null || latest.current.still) {
        ease.current = null;
        stand(to);
        return;
      }
      const { camera, invalidate } = get();
      const target = controls.current?.target.x ?? 0;
      const at = new Spherical().setFromVector3(camera.position.clone().setX(camera.position.x - target));
      // The short way round.
      at.theta += 2 * Math.PI * Math.round((to.at.theta - at.theta) / (2 * Math.PI));
      const open = staged.now();
      const from = { clip: Math.min(open.clip, beyond(latest.current.frame)), sector: open.sector };
      ease.current = { from: { at, target, middle: shift.current, opening: from }, to, begun: null };
      invalidate();
    },
    [get, controls, staged, stand],
  );

  useFrame(() => {
    const now = ease.current;
    if (!now) return;
    now.begun ??= performance.now();
    const share = Math.min(1, (performance.now() - now.begun) / EASE);
    if (share === 1) ease.current = null;
    stand(share === 1 ? now.to : between(now.from, now.to, share * share * (3 - 2 * share), latest.current.frame));
  });

  const shape = (frame.halfLength / frame.halfHeight).toFixed(1);
  // biome-ignore lint/correctness/useExhaustiveDependencies: only another view or another shape of the pair moves the camera
  useEffect(() => go(true), [view, shape, go]);
  // In another size the pair fills the picture again, where nobody has turned it.
  useEffect(() => {
    const { camera } = get();
    const here = last.current === null || last.current.distanceTo(camera.position) < 1e-6;
    if (here && ease.current === null) go(false);
    else offset(camera as PerspectiveCamera, size, band, shift.current);
  }, [size, band, get, go]);
  useEffect(() => {
    if (!Number.isFinite(staged.now().clip)) staged.set({ ...staged.now(), sector });
  }, [sector, staged]);
  const leave = useCallback(() => {
    const { camera, invalidate } = get();
    const target = controls.current?.target ?? new Vector3();
    const by = last.current?.clone().sub(target).angleTo(camera.position.clone().sub(target)) ?? 0;
    if (by < ANOTHER) return;
    const cut = Number.isFinite(staged.now().clip) && by < UNFACED;
    latest.current.onTurned(cut);
    if (!cut) staged.set({ clip: Number.POSITIVE_INFINITY, sector: latest.current.sector });
    invalidate();
  }, [get, controls, staged]);
  useEffect(() => {
    const orbit = controls.current;
    const stop = () => {
      if (ease.current) stand(ease.current.to);
      ease.current = null;
    };
    orbit?.addEventListener('start', stop);
    orbit?.addEventListener('end', leave);
    return () => {
      orbit?.removeEventListener('start', stop);
      orbit?.removeEventListener('end', leave);
    };
  }, [controls, stand, leave]);
  useTurned(turned, controls, leave);
}

const beyond = ({ halfLength }: Frame) => 1.05 * halfLength;

type Wanted = Pick<Watched, 'view' | 'side' | 'cut' | 'discs' | 'sector' | 'band'>;

/** Where a view stands, and how large (scene lengths) a dot of the screen is there. `fov`: degrees upward. */
export function standOf(
  { view, side, cut, discs, sector, band }: Wanted,
  fov: number,
  size: { width: number; height: number },
): Stand & { dot: number } {
  const toward = new Vector3(...wayTo(view.name, side)).normalize();
  const tan = Math.tan(radians(fov) / 2);
  const free = { up: size.height - band - 2 * MARGIN.up, across: size.width - 2 * MARGIN.across };
  const tanUp = (tan * Math.max(60, free.up)) / Math.max(1, size.height);
  const tanAcross = (tan * Math.max(60, free.across)) / Math.max(1, size.height);
  const clipped = view.name === 'From the nose';
  const target = clipped ? cut : 0;
  const circles = discs(clipped ? cut : null).map(([x, r]): Disc => [x - target, r]);
  const { distance, across, up } = framing(circles, [toward.x, toward.y, toward.z], tanUp, tanAcross);
  return {
    at: new Spherical().setFromVector3(toward.multiplyScalar(distance)),
    target,
    middle: [across, up],
    dot: (2 * tan * distance) / Math.max(1, size.height),
    opening: clipped ? { clip: cut, sector: 0 } : { clip: Number.POSITIVE_INFINITY, sector },
  };
}

/** The middle of the pair in the middle of what the labels leave. */
export function offset(
  camera: PerspectiveCamera,
  { width, height }: { width: number; height: number },
  band: number,
  [across, up]: readonly [number, number],
): void {
  const px = height / 2 / Math.tan(radians(camera.fov) / 2);
  camera.setViewOffset(width, height, across * px, -up * px - band / 2, width, height);
}

function between(from: Stand, to: Stand, t: number, frame: Frame): Stand {
  const mix = (a: number, b: number) => a + (b - a) * t;
  const clip = Math.min(to.opening.clip, beyond(frame));
  return {
    at: new Spherical(mix(from.at.radius, to.at.radius), mix(from.at.phi, to.at.phi), mix(from.at.theta, to.at.theta)),
    target: mix(from.target, to.target),
    middle: [mix(from.middle[0], to.middle[0]), mix(from.middle[1], to.middle[1])],
    opening: { clip: mix(from.opening.clip, clip), sector: mix(from.opening.sector, to.opening.sector) },
  };
}

/** The camera goes round what it looks at; never over the top, where up would turn over. */
function useTurned(turned: RefObject<Turned | null>, controls: Controls, onDone: () => void): void {
  const get = useThree((state) => state.get);
  useImperativeHandle(
    turned,
    () => ({
      turn(across, up, closer) {
        const { camera, invalidate } = get();
        const target = controls.current?.target ?? new Vector3();
        const at = new Spherical().setFromVector3(camera.position.clone().sub(target));
        at.theta += across;
        at.phi = Math.min(Math.PI - 0.02, Math.max(0.02, at.phi - up));
        at.radius = Math.min(FURTHEST, Math.max(NEAREST, at.radius / closer));
        camera.position.setFromSpherical(at).add(target);
        camera.lookAt(target);
        controls.current?.update();
        invalidate();
        onDone();
      },
    }),
    [get, controls, onDone],
  );
}

/** Says when the graphics context is taken away; not when the scene itself gives it up. */
export function useLost(lost: RefObject<() => void>): void {
  const canvas = useThree(({ gl }) => gl.domElement);
  useEffect(() => {
    const tell = (event: Event) => {
      event.preventDefault();
      lost.current();
    };
    canvas.addEventListener('webglcontextlost', tell);
    return () => canvas.removeEventListener('webglcontextlost', tell);
  }, [canvas, lost]);
}
