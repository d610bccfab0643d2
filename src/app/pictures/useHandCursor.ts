/**
 * The pointer over the solid picture says what a hand would do there: over steel it moves the journal, elsewhere it
 * turns the view. Asked once a frame while nothing is held, so that a drag costs nothing by it.
 */
import { useThree } from '@react-three/fiber';
import { useEffect } from 'react';
import { Raycaster, Vector2 } from 'three';

const MOVES = 'ew-resize';
const TURNS = 'grab';

export function useHandCursor(): void {
  const get = useThree((state) => state.get);
  const canvas = useThree((state) => state.gl.domElement);
  useEffect(() => {
    const ray = new Raycaster();
    const at = new Vector2();
    let frame = 0;
    let [x, y] = [0, 0];
    const over = (event: PointerEvent) => {
      if (event.buttons !== 0 || event.pointerType === 'touch') return;
      [x, y] = [event.offsetX, event.offsetY];
      if (frame !== 0) return;
      frame = requestAnimationFrame(() => {
        frame = 0;
        const { camera, scene, size } = get();
        ray.setFromCamera(at.set((2 * x) / size.width - 1, 1 - (2 * y) / size.height), camera);
        const metal = ['journal', 'bush'].flatMap((name) => scene.getObjectByName(name) ?? []);
        const [first] = ray.intersectObjects(metal, false);
        canvas.style.cursor = first?.object.name === 'journal' ? MOVES : TURNS;
      });
    };
    canvas.addEventListener('pointermove', over);
    return () => {
      canvas.removeEventListener('pointermove', over);
      cancelAnimationFrame(frame);
    };
  }, [get, canvas]);
}
