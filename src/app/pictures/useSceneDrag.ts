/**
 * Takes hold of the journal in the scene and moves it along the axis, or, at its nose, pulls it aside; listens to the
 * window, so that a fast hand does not lose it.
 */
import { type ThreeEvent, useThree } from '@react-three/fiber';
import { useEffect, useRef } from 'react';
import { Plane, Raycaster, Vector2, Vector3 } from 'three';
import { useLatest } from '../state/useLatest.ts';
import type { Frame } from './revolve.ts';
import type { Controls, SceneProps } from './sceneProps.ts';

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
    if (!nose) facing.setX(0);
    if (facing.length() < LEAST_ACROSS) return;
    event.stopPropagation();
    const plane = new Plane().setFromNormalAndCoplanarPoint(facing.normalize(), event.point);
    const from = event.point.clone();
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
      if (!nose) latest.current.onDragEnd();
    };
    const move = (e: PointerEvent) => {
      // From where the canvas stood at the start: to ask again would lay out the page at every move.
      const [x, y] = [
        e.clientX + window.scrollX - scrolled.x - box.left,
        e.clientY + window.scrollY - scrolled.y - box.top,
      ];
      ray.setFromCamera(at.set((2 * x) / box.width - 1, 1 - (2 * y) / box.height), camera);
      if (!ray.ray.intersectPlane(plane, hit)) return;
      // Seen from in front of the nose, x is to the right: away from the scene's z.
      if (nose) latest.current.onPull((from.z - hit.z) * metres, (hit.y - from.y) * metres);
      else latest.current.onDrag((hit.x - from.x) * metres);
    };
    drop.current = end;
    if (controls.current) controls.current.enabled = false;
    window.addEventListener('pointermove', mine(move), { signal: listening.signal });
    window.addEventListener('pointerup', mine(end), { signal: listening.signal });
    window.addEventListener('pointercancel', mine(end), { signal: listening.signal });
    if (nose) latest.current.onPullStart(station);
    else latest.current.onDragStart();
  };
}
