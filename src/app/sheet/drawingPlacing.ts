/** Where a part stands on its drawing: as large as it can be with every dimension within the drawing. */
import type { Dimensions } from '../picture/dimensions.ts';
import type { SectionFrame } from '../picture/sectionFrame.ts';
import { dimensionsOnScreen, type Measures, type Placing } from '../picture/sectionLayout.ts';
import type { Size } from '../useSize.ts';

/** Two lines of notes above, and room for their leaders to lean. */
const NOTES_END = 44;
const LEAN = 20;
const EDGE = 6;
/** Past the outermost dimension line. */
const PAST = 8;
const LETTERING = 14;
/** Each try is smaller by this; at the last, dimensions may leave the drawing, which only a part of odd shape needs. */
const SMALLER = 0.94;
const TRIES = 40;

export function drawingPlacing(frame: SectionFrame, dimensions: Dimensions, size: Size, measures: Measures): Placing {
  const across = frame.right - frame.left;
  let scale = Math.min((size.width - 2 * EDGE) / across, (size.height - NOTES_END - LEAN) / (2 * frame.outer));
  for (let k = 0; ; k++, scale *= SMALLER) {
    const top = NOTES_END + LEAN;
    const at: Placing = { level: 'full', scale, middle: { x: size.width / 2, y: top + frame.outer * scale }, station: (frame.left + frame.right) / 2, notesEnd: NOTES_END };
    const box = extent(frame, dimensions, at, size, measures);
    const fits = box.right - box.left <= size.width - 2 * EDGE && box.bottom <= size.height - EDGE && box.top >= NOTES_END;
    if (!fits && k < TRIES) continue;
    // What is left of the room goes to both sides alike.
    const shift = { x: EDGE + (size.width - 2 * EDGE - (box.right - box.left)) / 2 - box.left, y: Math.max(0, (size.height - EDGE - box.bottom) / 2) };
    return { ...at, middle: { x: at.middle.x + shift.x, y: at.middle.y + shift.y } };
  }
}

/** Everything of the part and its dimensions; figures of diameters stand before their lines. */
function extent(frame: SectionFrame, dimensions: Dimensions, at: Placing, size: Size, measures: Measures) {
  const { lengths, rear, nose } = dimensionsOnScreen(frame, dimensions, at, size, measures);
  const half = ((frame.right - frame.left) / 2) * at.scale;
  const upright = [...rear, ...nose];
  return {
    left: Math.min(at.middle.x - half, ...rear.map(({ line }) => line - LETTERING - PAST), ...lengths.map(({ from }) => from)),
    right: Math.max(at.middle.x + half, ...nose.map(({ line }) => line + PAST), ...lengths.map(({ to }) => to)),
    top: Math.min(at.middle.y - frame.outer * at.scale, ...upright.map(({ from }) => from)),
    bottom: Math.max(at.middle.y + frame.outer * at.scale, ...lengths.map(({ line }) => line + PAST), ...upright.map(({ to }) => to)),
  };
}
