/** The pair that the drawing makes, true to its sizes, to be moved and pulled before there is a job. */
import { useLayoutEffect, useState } from 'react';
import type { Design } from '../../../design/definition.ts';
import type { System } from '../../../design/units.ts';
import { asAssumed } from '../../../report/assumed.ts';
import { fitVerdict } from '../../../report/fit/verdict.ts';
import { Section } from '../../pictures/Section.tsx';
import { useAngles } from '../../state/angles.ts';
import { createWork, type Work } from '../../state/store.ts';
import { usePair } from '../fit/usePair.ts';
import type { Arrangement } from './arrangements.ts';
import { keepLengths } from './lengths.ts';
import type { Typed } from './newDesign.ts';

interface Props {
  design: Design;
  plan: Arrangement;
  typed: Typed;
  stale: boolean;
  system: System;
}

export function LivePair({ design, plan, typed, stale, system }: Props) {
  // A piece of work of its own, kept nowhere: a hand moves it as it moves any other.
  const [trial] = useState(() => createWork(design));
  useLayoutEffect(() => {
    const { position } = trial.store.getState().design;
    trial.store.setState({ design: position === undefined ? design : { ...design, position }, system, unfinished: {} });
    keepLengths(trial, plan, typed);
  }, [trial, design, plan, typed, system]);
  return <Pair work={trial} stale={stale} system={system} />;
}

function Pair({ work, stale, system }: { work: Work; stale: boolean; system: System }) {
  const { design, fit, drawn } = usePair(work);
  const { headline } = asAssumed(fitVerdict(design, fit, system, useAngles()), design, ['seats']);
  return (
    <section aria-label="The pair these sizes make" className={stale ? 'stale' : ''}>
      <h2>The pair: pull it along, and its nose up and down</h2>
      <p className="fine">{stale ? 'As it was while the figures went together.' : headline}</p>
      <Section design={design} drawn={drawn} fit={fit} system={system} work={work} first="journal" />
    </section>
  );
}
