/** What the solid picture is given. */

import type { OrbitControls } from '@react-three/drei';
import type { ComponentRef, ReactNode, RefObject } from 'react';
import type { Metres } from '../../design/dimension.ts';
import type { System } from '../../design/units.ts';
import type { PrintMap } from '../../report/print/maps.ts';
import type { Drawing } from './drawing.ts';

/** What each part shows in blue; thickness of the blue, m. */
export interface Prints {
  maps: readonly PrintMap[];
  thickness: Metres;
}

export interface SceneProps {
  drawing: Drawing;
  system: System;
  /** Opening of the bush, degrees. */
  sector: number;
  /** The prints to show instead of the film. */
  prints: Prints | null;
  dark: boolean;
  onDragStart(): void;
  /** True axial displacement (m) since the drag began. */
  onDrag(deltaMetres: number): void;
  onDragEnd(): void;
  /**
   * The nose is taken hold of at a station (m), and pulled aside by a true displacement (m) to the right and upward.
   */
  onPullStart(station: Metres): void;
  onPull(x: number, y: number): void;
  /** The machine cannot draw the scene, or no longer. */
  onLost(): void;
  /** what stands over the picture, in its lower right corner; the same for as long as it stands there */
  over?: ReactNode;
}

export type Controls = RefObject<ComponentRef<typeof OrbitControls> | null>;
