/**
 * The labels over the solid picture, written straight into an SVG whenever the picture is drawn: while the journal or
 * the camera moves React renders nothing.
 */
import { useFrame, useThree } from '@react-three/fiber';
import { type RefObject, useEffect, useRef } from 'react';
import { type Camera, Vector3 } from 'three';
import { fineText, type System } from '../../../design/units.ts';
import { useLatest } from '../../state/useLatest.ts';
import type { Drawing } from '../drawing.ts';
import type { Drawn } from '../drawn.ts';
import type { Frame } from '../revolve.ts';
import { discsOf } from '../sceneGeometry.ts';
import { svgElement } from '../standaloneSvg.ts';
import { textWidth } from '../textWidth.ts';
import { anchorsOf, axisEnds, toldOf } from './anchors.ts';
import type { Staged } from './staged.ts';
import { type EndTag, type Placed, type Plan, placeTags, planned, type SeatTag, TEXT, type Widths } from './tags.ts';

/** The widest that a film is told, mm. */
const WIDEST = 0.08888;
/** ms between two tellings of a picture that changes. */
const TOLD = 1000;

export interface Tagged {
  svg: RefObject<SVGSVGElement | null>;
  told: RefObject<HTMLElement | null>;
}

export const planOf = (names: readonly string[], system: System, across: number, width: Widths = textWidth): Plan =>
  planned(names, fineText(WIDEST, system), across, width);

interface Props {
  drawing: Drawing;
  frame: Frame;
  staged: Staged;
  system: System;
  plan: Plan;
  tagged: Tagged;
  /** whether the cut from the nose goes through more than one seat */
  inSteps?: boolean;
  /** of the text and the lines */
  colour: string;
  ground: string;
}

export function SceneTags({ drawing, frame, staged, system, plan, tagged, inSteps = true, colour, ground }: Props) {
  const written = useRef('');
  const standing = useRef<{ svg: SVGSVGElement | null; marks: readonly Mark[] }>({ svg: null, marks: [] });
  const get = useThree((state) => state.get);
  const write = useLatest(() => {
    const svg = tagged.svg.current;
    const { camera, size } = get();
    if (!svg || size.width === 0) return;
    const placed = tagsNow(camera, size, { drawing, frame, staged, system, plan, inSteps });
    const now = JSON.stringify([placed, size, colour, ground]);
    if (now === written.current) return;
    written.current = now;
    const marks = placed.flatMap((tag) => marksOf(tag, colour, ground));
    setTo(svg, { viewBox: `0 0 ${size.width} ${size.height}` });
    drawMarks(svg, marks, standing.current.svg === svg ? standing.current.marks : []);
    standing.current = { svg, marks };
  });
  // With the solids, once a frame: the words beside it are painted with that frame.
  useEffect(() => drawing.subscribe(() => get().invalidate()), [drawing, get]);
  useFrame(() => write.current());
  useTold(drawing, system, tagged);
  return null;
}

/** The labels as they stand for a camera. */
export function tagsNow(
  camera: Camera,
  size: { width: number; height: number },
  {
    drawing,
    frame,
    staged,
    system,
    plan,
    inSteps,
  }: Pick<Props, 'drawing' | 'frame' | 'staged' | 'system' | 'plan' | 'inSteps'>,
  width: Widths = textWidth,
): Placed[] {
  camera.updateMatrixWorld();
  const drawn = drawing.now();
  const eye = camera.position.toArray();
  const onScreen = ([x, y, z]: readonly [number, number, number]) => {
    const at = new Vector3(x, y, z).project(camera);
    return { x: ((at.x + 1) / 2) * size.width, y: ((1 - at.y) / 2) * size.height };
  };
  const opening = staged.now();
  const seats = anchorsOf(drawn, frame, opening, eye, system, inSteps).map(
    (one): SeatTag => ({ ...one, at: onScreen(one.at) }),
  );
  const cut = Number.isFinite(opening.clip);
  const named = () =>
    planOf(
      seats.map(({ name }) => name),
      system,
      size.width,
      width,
    );
  const used: Plan = cut ? { ...named(), straight: true } : plan;
  // What lets a pulled nose go has the corner.
  const over = drawn.pulled ? [{ x: size.width - CORNER.width, y: size.height - CORNER.height, ...CORNER }] : [];
  return placeTags(seats, cut ? [] : endTags(drawn, frame, onScreen), used, size, width, over);
}

/** px */
const CORNER = { width: 100, height: 58 };

type Project = (at: readonly [number, number, number]) => { x: number; y: number };

/** Past the outline of the journal's ends, so that neither stands on metal. */
function endTags(drawn: Drawn, frame: Frame, onScreen: Project): EndTag[] {
  const { journal } = discsOf(drawn, frame);
  const tips = axisEnds(frame).map((x) => onScreen([x, 0, 0]));
  const discs = [journal[0] ?? [0, 0], journal[journal.length - 1] ?? [0, 0]];
  return ENDS.map(({ key, text, end }): EndTag => {
    const [tip, other] = [tips[end]!, tips[1 - end]!];
    const out = { x: tip.x - other.x, y: tip.y - other.y };
    const long = Math.hypot(out.x, out.y) || 1;
    const [x, r] = discs[end]!;
    const past = ROUND.reduce((most, turn) => {
      const spot = onScreen([x, r * Math.sin(turn), r * Math.cos(turn)]);
      return Math.max(most, ((spot.x - tip.x) * out.x + (spot.y - tip.y) * out.y) / long);
    }, 0);
    return { key, text, at: { x: tip.x + (past * out.x) / long, y: tip.y + (past * out.y) / long }, out };
  });
}
const ENDS = [
  { key: 'end nose', text: 'nose', end: 1 },
  { key: 'end rear', text: 'rear', end: 0 },
] as const;
const ROUND = Array.from({ length: 12 }, (_, k) => (k * Math.PI) / 6);

const at = (value: number) => value.toFixed(1);

interface Mark {
  name: 'path' | 'circle' | 'text';
  attributes: Record<string, string | number>;
  text?: string;
}

/** What stands there already is written over, and of that what is another than before. */
function drawMarks(svg: SVGSVGElement, marks: readonly Mark[], before: readonly Mark[]): void {
  marks.forEach(({ name, attributes, text }, i) => {
    const old = svg.children[i];
    const was = old && before[i]?.name === name ? before[i] : null;
    const node = was ? old! : svgElement(name, {});
    for (const each in was?.attributes) if (!Object.hasOwn(attributes, each)) node.removeAttribute(each);
    setTo(node, attributes, was?.attributes);
    if (text !== was?.text) node.textContent = text ?? '';
    if (old && !was) old.replaceWith(node);
    else if (!old) svg.append(node);
  });
  while (svg.children.length > marks.length) svg.lastElementChild?.remove();
}

function setTo(node: Element, attributes: Mark['attributes'], before: Mark['attributes'] = {}): void {
  for (const [key, value] of Object.entries(attributes)) if (before[key] !== value) node.setAttribute(key, `${value}`);
}

function marksOf({ kind, lines, x, y, width, leader, behind }: Placed, colour: string, ground: string): Mark[] {
  // What metal hides is pointed at in dashes, as a drawing has it, and by a ring.
  const line = { fill: 'none', stroke: colour, 'stroke-width': 1, 'stroke-dasharray': behind ? '4 3' : 'none' };
  const path = `M${leader.map((spot) => `${at(spot.x)} ${at(spot.y)}`).join('L')}`;
  const foot = leader[leader.length - 1];
  const middle = kind === 'listed' ? x : x + width / 2;
  const dot = (attributes: Mark['attributes']): Mark => ({ name: 'circle', attributes });
  return [
    ...(foot
      ? [
          {
            name: 'path' as const,
            attributes: { d: path, ...line, stroke: ground, 'stroke-width': 3, 'stroke-opacity': 0.55 },
          },
          { name: 'path' as const, attributes: { d: path, ...line } },
          dot({
            cx: at(foot.x),
            cy: at(foot.y),
            r: 2.6,
            fill: behind ? ground : colour,
            stroke: behind ? colour : ground,
          }),
        ]
      : []),
    ...(kind === 'number' ? [dot({ cx: at(middle), cy: at(y + 10), r: 9.5, fill: ground, stroke: colour })] : []),
    ...lines.map(
      (text, i): Mark => ({
        name: 'text',
        text,
        attributes: {
          x: at(middle),
          y: at(y + (kind === 'number' ? 14.5 : 13 + 17 * i)),
          'font-size': TEXT,
          'font-style': kind === 'end' ? 'italic' : 'normal',
          'text-anchor': kind === 'listed' ? 'start' : 'middle',
          fill: colour,
          stroke: ground,
          'stroke-width': 4,
          'stroke-linejoin': 'round',
          'paint-order': 'stroke',
        },
      }),
    ),
  ];
}

/** The same in words, for who does not see it: now and then, while the picture has the focus. */
function useTold(drawing: Drawing, system: System, { told }: Tagged): void {
  useEffect(() => {
    let waiting: ReturnType<typeof setTimeout> | null = null;
    const tell = () => {
      waiting = null;
      const [node, words] = [told.current, toldOf(drawing.now(), system)];
      if (!node || node.textContent === words) return;
      // Elsewhere on the page something else is listened to.
      node.setAttribute('aria-live', node.closest('.stage')?.contains(document.activeElement) ? 'polite' : 'off');
      node.textContent = words;
    };
    tell();
    const stop = drawing.subscribe(() => {
      waiting ??= setTimeout(tell, TOLD);
    });
    return () => {
      stop();
      if (waiting !== null) clearTimeout(waiting);
    };
  }, [drawing, system, told]);
}
