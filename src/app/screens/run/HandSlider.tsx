/** A slider on a number of the design: the picture follows the hand, and the whole drag is one step to undo. */
import { useId } from 'react';
import type { Work } from '../../state/store.ts';

interface Props {
  work: Work;
  title: string;
  min: number;
  max: number;
  step: number;
  /** where the slider stands, in its own measure */
  value: number;
  text: string;
  set(value: number): void;
}

export function HandSlider({ work, title, min, max, step, value, text, set }: Props) {
  const id = useId();
  return (
    <div className="hand-slider">
      <label htmlFor={id}>{title}</label>
      <input
        id={id}
        type="range"
        min={min}
        max={max}
        step={step}
        value={value}
        aria-valuetext={text}
        onPointerDown={() => work.dragStart()}
        onPointerUp={() => work.dragEnd()}
        onPointerCancel={() => work.dragEnd()}
        onBlur={() => work.dragEnd()}
        onChange={(event) => set(Number(event.target.value))}
      />
      <output htmlFor={id}>{text}</output>
    </div>
  );
}
