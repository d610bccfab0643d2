/**
 * Takes hold of the journal in the scene and moves it along the axis, or, at its nose, pulls it aside where the hand
 * sets out so; listens to the window, so that a fast hand does not lose it.
 */
import { type ThreeEvent, useThree } from '@react-three/fiber';
import { useEffect, useRef } from 'react';
import { type Camera, Plane, Raycaster, Vector2, Vector3 } from 'three';
import { useLatest } from '../state/useLatest.ts';
import type { Frame } from './revolve.ts';
import type { Controls, SceneProps } from './sceneProps.ts';
import { type Way, wayOf } from './useNoseHand.ts';

/** Below this share of the axis seen square, a drag along it would be a guess. */
const LEAST_ACROSS = 0.35;

type Calls = Pick<SceneProps, 'drawing' | 'onDragStart' | 'onDrag' | 'onDragEnd' | 'onPullStart' | 'onPull'>;

export function useSceneDrag(calls: Calls, frame: Frame, controls: Controls) {
  const get = useThree((state) => state.get);
  const latest = useLatest(calls);
  const drop = useRef<(() => void) | null>(null);
  useEffect(() => () => drop.current?.(), []);

  return (event: ThreeEvent<PointerEvent>) => {
    if (event.button !== 0 || drop.current) return;
    const { camera, gl } = get();
    // The plane through the axis' direction that faces the viewer most.
    const station = event.point.x / frame.scale + frame.centre;
    const nose = event.point.x > frame.halfLength - frame.overhang * frame.scale;
    const facing = event.ray.direction.clone();
    const across = facing.clone().setX(0);
    // Looked at along the axis nobody can say how far along it a hand goes.
    const sees = across.length() >= LEAST_ACROSS;
    if (!sees && !nose) return;
    event.stopPropagation();
    const planeOf = (square: Vector3) => new Plane().setFromNormalAndCoplanarPoint(square.normalize(), event.point);
    const planes = { along: planeOf(across), aside: planeOf(facing) };
    const from = event.point.clone();
    // At the nose the way the hand sets out decides, as in the section.
    let way: Way | null = nose ? (sees ? null : 'aside') : 'along';
    const metres = 1 / (frame.scale * latest.current.drawing.now().factor);
    const { pointerId } = event;
    const ray = new Raycaster();
    const at = new Vector2();
    const hit = new Vector3();
    const box = gl.domElement.getBoundingClientRect();
    const scrolled = { x: window.scrollX, y: window.scrollY };
    const listening = new AbortController();
    const mine = (act: (e: PointerEvent) => void) => (e: PointerEvent) => {
      if (e.pointerId === pointerId) act(e);
    };
    const end = () => {
      listening.abort();
      drop.current = null;
      if (controls.current) controls.current.enabled = true;
      if (way === 'along') latest.current.onDragEnd();
    };
    const begin = () => {
      if (way === 'aside') latest.current.onPullStart(station);
      else if (way === 'along') latest.current.onDragStart();
    };
    const axis = onScreen(from.clone().setX(from.x + AHEAD), camera, box)
      .sub(onScreen(from, camera, box))
      .normalize();
    const move = (e: PointerEvent) => {
      // From where the canvas stood at the start: to ask again would lay out the page at every move.
      const [x, y] = [
        e.clientX + window.scrollX - scrolled.x - box.left,
        e.clientY + window.scrollY - scrolled.y - box.top,
      ];
      if (way === null) {
        const gone = new Vector2(e.clientX - event.clientX, e.clientY - event.clientY);
        way = wayOf(gone.dot(axis), gone.cross(axis));
        if (way === null) return;
        begin();
      }
      ray.setFromCamera(at.set((2 * x) / box.width - 1, 1 - (2 * y) / box.height), camera);
      if (!ray.ray.intersectPlane(planes[way], hit)) return;
      // Seen from in front of the nose, x is to the right: away from the scene's z.
      if (way === 'aside') latest.current.onPull((from.z - hit.z) * metres, (hit.y - from.y) * metres);
      else latest.current.onDrag((hit.x - from.x) * metres);
    };
    drop.current = end;
    if (controls.current) controls.current.enabled = false;
    window.addEventListener('pointermove', mine(move), { signal: listening.signal });
    window.addEventListener('pointerup', mine(end), { signal: listening.signal });
    window.addEventListener('pointercancel', mine(end), { signal: listening.signal });
    begin();
  };
}

/** Scene lengths: so far ahead on the axis a point shows which way it runs on the screen. */
const AHEAD = 0.1;

/** px in the picture. */
function onScreen(at: Vector3, camera: Camera, { width, height }: { width: number; height: number }): Vector2 {
  const { x, y } = at.clone().project(camera);
  return new Vector2(((x + 1) / 2) * width, ((1 - y) / 2) * height);
}
