/** The materials of a scene, which share what they know of it: one set for a canvas. */
import { DoubleSide, FrontSide, Plane, ShaderMaterial, Vector2, Vector3, Vector4 } from 'three';
import { BLUE } from '../blue.ts';
import type { Drawn } from '../drawn.ts';
import { CLASS_COLOUR, INTERFERENCE, linear, type Rgb, touchColour } from '../filmColour.ts';
import type { Frame } from '../revolve.ts';
import { facesOf, linesAt } from '../sceneGeometry.ts';
import { litMetal, pageColour } from './metals.ts';
import { CUT, METAL, OIL, SHADOW, TOUCH, VERTEX } from './shaders.ts';

/** As many as the shaders look at; past them the shade of a bush is left out. */
const BUSHES = 6;
const NOWHERE = 1e3;
/** How far the shade of a bush reaches, to the outside of the bush. */
const SHADE = 0.3;
/** CSS px */
const STROKE = 0.8;

const vector = (colour: Rgb) => new Vector3(...linear(colour));

export type Look = ReturnType<typeof createLook>;

/** `marked`: with what shows that the journal turns. */
export function createLook(marked: boolean) {
  const shared = {
    clip: { value: NOWHERE },
    open: { value: 1 },
    faces: { value: Array.from({ length: BUSHES }, () => new Vector2(NOWHERE, NOWHERE)) },
    reach: { value: 0.2 },
    ink: { value: new Vector3() },
    stroke: { value: STROKE },
    dark: { value: 0 },
    hatch: { value: 0.05 },
    turn: { value: 0 },
    axis: { value: new Vector4() },
    ends: { value: new Vector4(-1, 1, 1, 1) },
    pressed: { value: vector(INTERFERENCE) },
    thin: { value: vector(CLASS_COLOUR.thin) },
    wide: { value: vector(CLASS_COLOUR.thick) },
    touching: { value: vector(touchColour(false)) },
    touched: { value: new Vector3() },
  };
  const made = (fragmentShader: string, own: Record<string, { value: unknown }>, more: object = {}) => {
    const material = new ShaderMaterial({ vertexShader: VERTEX, fragmentShader, side: FrontSide, ...more });
    // Shared, not copied: a change of one is a change in all.
    Object.assign(material.uniforms, shared, own);
    return material;
  };
  const raised = { polygonOffset: true, polygonOffsetFactor: -1, polygonOffsetUnits: -4 };
  const under = { side: DoubleSide, polygonOffset: true, polygonOffsetFactor: 1, polygonOffsetUnits: 1 };
  const nowhere = { value: new Vector3(9, 9, 9) };
  const veil = { transparent: true, depthWrite: false };
  const materials = {
    steel: made(
      METAL,
      { metal: { value: new Vector3() } },
      { defines: marked ? { MARKED: '', SCRIBED: '' } : { MARKED: '' } },
    ),
    bronze: made(METAL, { metal: { value: new Vector3() } }, { defines: { BORE: '' } }),
    print: made(METAL, { metal: { value: new Vector3() } }, { defines: { TINTED: '' }, ...raised }),
    steelCut: made(CUT, { metal: { value: new Vector3() }, lean: { value: -1 } }, { side: DoubleSide }),
    bronzeCut: made(CUT, { metal: { value: new Vector3() }, lean: { value: 1 } }, { side: DoubleSide }),
    oil: made(OIL, { thick: { value: 0.62 } }, { defines: { TINTED: '', SHELL: '' }, ...veil, ...raised }),
    oilCut: made(OIL, { thick: { value: 1 } }, { defines: { TINTED: '' }, side: DoubleSide, ...raised }),
    // A raised pressure: its colour is its own legend's, and nothing of it is pressed in.
    skin: made(
      OIL,
      { thick: { value: 1 }, pressed: nowhere, thin: nowhere, wide: nowhere, touching: nowhere },
      { defines: { TINTED: '' }, ...under },
    ),
    touch: made(TOUCH, { metal: { value: new Vector3() }, glow: { value: 0 } }),
    shadow: made(SHADOW, { size: { value: new Vector2(1, 1) } }, veil),
    glow: made(TOUCH, { metal: { value: new Vector3() }, glow: { value: 1 } }, veil),
  };
  return {
    materials,
    shared,
    /** the same cut for what three draws by itself */
    plane: new Plane(new Vector3(-1, 0, 0), NOWHERE),
    /** In which light the page stands, and how fine its dots are. */
    themed(dark: boolean, dpr: number) {
      shared.ink.value.set(...linear(pageColour('ink', dark)));
      shared.stroke.value = STROKE * dpr;
      shared.dark.value = dark ? 1 : 0;
      const { steel, bronze, print, steelCut, bronzeCut } = materials;
      for (const one of [steel, print]) one.uniforms.metal!.value.set(...linear(litMetal('steel', dark)));
      bronze.uniforms.metal!.value.set(...linear(litMetal('bronze', dark)));
      steelCut.uniforms.metal!.value.set(...linear(pageColour('steel', dark)));
      bronzeCut.uniforms.metal!.value.set(...linear(pageColour('bronze', dark)));
      const touch = linear(touchColour(dark));
      shared.touched.value.set(...touch);
      for (const one of [materials.touch, materials.glow]) one.uniforms.metal!.value.set(...touch);
    },
    /** Where the bushes, the journal's ends and its axis are. */
    placed(drawn: Drawn, frame: Frame) {
      const across = (z: number) => frame.scale * (z - frame.centre);
      const faces = facesOf(drawn);
      shared.faces.value.forEach((face, i) => {
        const [rear, nose] = faces[i] ?? [];
        face.set(rear === undefined ? NOWHERE : across(rear), nose === undefined ? NOWHERE : across(nose));
      });
      shared.reach.value = SHADE * frame.outside * frame.scale;
      const { journal } = linesAt(drawn, frame, 0);
      if (journal.length < 4) return;
      const [rear, nose] = [journal[1]!, journal[journal.length - 2]!];
      const size = (end: readonly [number, number]) => frame.scale * (end[1] - drawn.aside(end[0], Math.PI));
      shared.ends.value.set(across(rear[0]), across(nose[0]), size(rear), size(nose));
      // Straight, so that two stations tell it; to the right seen from the nose is away from the scene's z.
      const at = (z: number) => [drawn.aside(z, Math.PI / 2), -drawn.aside(z, 0)] as const;
      const [from, to] = [at(rear[0]), at(nose[0])];
      const [dy, dz] = [0, 1].map((k) => (to[k]! - from[k]!) / (nose[0] - rear[0]));
      const start = rear[0] - frame.centre;
      shared.axis.value.set(frame.scale * (from[0] - dy! * start), frame.scale * (from[1] - dz! * start), dy!, dz!);
    },
    dispose() {
      for (const material of Object.values(materials)) material.dispose();
    },
  };
}

/** sRGB of what the blue leaves on a part. */
export const blueOf = (dark: boolean): Rgb => (dark ? BLUE.dark : BLUE.light);
