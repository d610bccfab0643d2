/**
 * For a projector: what is so now, the section and every seat magnified, as large as the wall allows, and one control.
 * Any state of it goes out as a link that opens here, or as a picture.
 */
import { useEffect, useRef, useState } from 'react';
import { useStore } from 'zustand';
import { fineText, type System } from '../../../design/units.ts';
import { WITHHELD_NOW } from '../../../report/cut/withheld.ts';
import type { FitReport } from '../../../report/fit/definition.ts';
import { standsNow } from '../../../report/fit/now.ts';
import { onDemand } from '../../frame/onDemand.tsx';
import { axialValues } from '../../pictures/axialValues.ts';
import { axialDrag, landmarks, moveByKey, reachOf, stopped } from '../../pictures/journalMove.ts';
import { timesText } from '../../pictures/timesText.ts';
import { useAngles } from '../../state/angles.ts';
import { useBelief } from '../../state/belief.ts';
import { nameOf, offer } from '../../state/files.ts';
import type { Work } from '../../state/store.ts';
import { useHeld } from '../../state/useHeld.ts';
import { ofPair, usePairTold } from '../../state/usePairTold.ts';
import { useThrottled } from '../../state/useThrottled.ts';
import { PairSection } from '../fit/PairSection.tsx';
import { usePair } from '../fit/usePair.ts';
import './show.css';

const Lenses = onDemand(() => import('../fit/Lenses.tsx'), { what: 'The lenses', loading: '' });

/** ms between two things a screen reader is told. */
const PACE = 1200;

export default function ShowScreen({ work: own }: { work: Work }) {
  const asked = useStore(own.store, (state) => state.design);
  const { work, stands, withheld } = usePairTold(own, useBelief(asked), Boolean(asked.cut?.trials));
  const pair = usePair(work);
  const { design, system, fit, drawn, ghost } = pair;
  const stood = ofPair(withheld ? 'drawn' : stands, standsNow(design, fit, system, null));
  const now = withheld === 'working' ? WITHHELD_NOW.working : stood;
  const announced = useThrottled(now, PACE);
  const box = useRef<HTMLDivElement>(null);
  useLeaving();
  return (
    <div className="show" ref={box}>
      <h1 className="show-now">{now}</h1>
      <p className="visually-hidden" role="status">
        {announced}
      </p>
      <div className="show-pictures">
        <PairSection work={work} pair={pair} />
        <Lenses drawn={drawn} ghost={ghost} fit={fit} system={system} />
      </div>
      <Move work={work} fit={fit} system={system} />
      <TakeIt work={own} box={box} factor={drawn.factor} before={pair.scale.before} />
    </div>
  );
}

/** Escape goes back to Fit. */
function useLeaving() {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      // The browser leaves the full screen by it first.
      if (event.key === 'Escape' && !event.defaultPrevented && !document.fullscreenElement)
        window.location.hash = '#fit';
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, []);
}

/** mm: the finest step of the hand */
const FINEST = 0.0001;
/** How much of its way a push beyond the touch takes before it goes on. */
const DETENT = 0.01;

/** The one control: the journal along its axis. */
function Move({ work, fit, system }: { work: Work; fit: FitReport; system: System }) {
  const [from, to] = useHeld(reachOf(fit.position, landmarks(fit)), work);
  // On whole steps, so that the figures are.
  const [low, high] = [FINEST * Math.floor(from / FINEST), FINEST * Math.ceil(to / FINEST)];
  // What has hold of it, and where it stood then; a device that helps sets it without.
  const hold = useRef<{ at: number; to: ReturnType<typeof axialDrag> } | null>(null);
  const drop = () => {
    hold.current = null;
    work.dragEnd();
  };
  const set = (value: number) => {
    const { at, to } = hold.current ?? {};
    work.moveTo(to ? to(fit, value - at!, DETENT * (high - low)) : stopped(fit, fit.position, value));
  };
  return (
    <label className="show-move">
      <span className="visually-hidden">Journal along its axis</span>
      <span aria-hidden="true">←</span>
      <input
        type="range"
        min={low}
        max={high}
        step={FINEST}
        value={fit.position}
        aria-valuetext={axialValues(fit, system)['aria-valuetext']}
        onPointerDown={() => {
          hold.current = { at: fit.position, to: axialDrag(fit.position) };
          work.dragStart();
        }}
        onPointerUp={drop}
        onPointerCancel={drop}
        onBlur={drop}
        onKeyDown={(event) => moveByKey(event, work, fit)}
        onChange={(event) => set(Number(Number(event.target.value).toFixed(7)))}
      />
      <span aria-hidden="true">→</span>
      <output>{fineText(fit.position, system)}</output>
    </label>
  );
}

interface TakeProps {
  work: Work;
  box: { current: HTMLElement | null };
  factor: number;
  before: number | null;
}

function TakeIt({ work, box, factor, before }: TakeProps) {
  const way = useAngles();
  const [said, setSaid] = useState('');
  const [byHand, setByHand] = useState<string | null>(null);
  const tell = (what: string, act: () => Promise<unknown>) =>
    act().then(
      () => setSaid(what),
      (error: Error) => setSaid(`Not done: ${error.message}`),
    );
  const link = async () => {
    const { linkOf, pageOf, shownBy } = await import('../../takeAlong/link.ts');
    const { design, system } = work.store.getState();
    const made = linkOf(design, system, way, pageOf(window.location));
    if (made === null) throw new Error('it is too large for a link');
    const text = shownBy(made);
    // Without the right to the clipboard, or without one, it stands there to be copied by hand.
    const copied = await (navigator.clipboard?.writeText(text) ?? Promise.reject()).then(
      () => true,
      () => false,
    );
    setByHand(copied ? null : text);
    setSaid(copied ? 'The link is copied.' : 'Copy the link from its field.');
  };
  const picture = async () => {
    const { wholePicture } = await import('../../takeAlong/whole.ts');
    const title = work.store.getState().design.title ?? 'untitled';
    const now = box.current!.querySelector('.show-now')!.textContent!;
    const area = box.current!.querySelector<HTMLElement>('.show-pictures')!;
    offer(
      `${nameOf(title)}.png`,
      await wholePicture(area, `${title} · gaps drawn ${timesText(factor)}`, now),
      'image/png',
    );
  };
  const full = () =>
    document.fullscreenElement ? document.exitFullscreen() : document.documentElement.requestFullscreen();
  return (
    <p className="buttons show-take">
      <span className="fine">Gaps drawn {timesText(factor, before)}</span>
      <span role="status">{said}</span>
      <button type="button" onClick={() => void tell('', full)}>
        Full screen
      </button>
      <button type="button" onClick={() => void link().catch((error: Error) => setSaid(`Not done: ${error.message}`))}>
        Copy a link to this
      </button>
      <button type="button" onClick={() => void tell('The picture is saved.', picture)}>
        Save the picture
      </button>
      <a href="#fit">Leave</a>
      {byHand !== null && (
        <input
          className="show-link"
          aria-label="The link, to be copied by hand"
          readOnly
          value={byHand}
          ref={(field) => field?.select()}
        />
      )}
    </p>
  );
}
