/** The named states of the job at work: one is named, gone back to, or held against another. */
import { type FormEvent, useCallback, useEffect, useState } from 'react';
import { useStore } from 'zustand';
import type { Version } from '../../../jobs/shelf.ts';
import type { Work } from '../../state/store.ts';
import { Comparison } from './Comparison.tsx';

const WHEN = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' });
/** The present state, among the numbers of versions. */
const NOW = -1;

export function Versions({ work, id }: { work: Work; id: string }) {
  const { versions, refresh } = useVersions(work, id);
  const elsewhere = useStore(work.store, (state) => state.elsewhere);
  const [name, setName] = useState('');
  const [pair, setPair] = useState<[number, number] | null>(null);
  const { shelf, device } = work.keeper!;
  const take = async (event: FormEvent) => {
    event.preventDefault();
    if (name.trim() === '' || !work.mayWrite()) return;
    await work.keeper!.flush();
    await shelf.nameVersion(id, name.trim(), work.store.getState().design, device.now());
    setName('');
    refresh();
  };
  const drop = async (n: number) => {
    if (!work.mayWrite()) return;
    await shelf.dropVersion(id, n);
    if (pair?.includes(n)) setPair(null);
    refresh();
  };
  return (
    <details className="versions">
      <summary>Versions{versions.length > 0 && ` (${versions.length})`}</summary>
      <form onSubmit={take}>
        <label>
          <span>Name the state of now</span>
          <input
            value={name}
            maxLength={80}
            placeholder="as measured, after first grind"
            onChange={(event) => setName(event.target.value)}
          />
        </label>
        <button type="submit" disabled={elsewhere}>
          Name it
        </button>
      </form>
      <ul className="plain">
        {versions.map(({ n, name, made, design }) => (
          <li key={n}>
            <span>
              <strong>{name}</strong> <span className="fine">{WHEN.format(made)}</span>
            </span>
            <span className="buttons">
              <button type="button" onClick={() => setPair([n, NOW])}>
                Compare with now
              </button>
              <button type="button" onClick={() => work.backTo(design)}>
                Go back to it
              </button>
              <button type="button" aria-label={`Take off version ${name}`} onClick={() => void drop(n)}>
                Take off
              </button>
            </span>
          </li>
        ))}
      </ul>
      {pair && <Compared work={work} versions={versions} pair={pair} setPair={setPair} />}
    </details>
  );
}

interface ComparedProps {
  work: Work;
  versions: readonly Version[];
  pair: [number, number];
  setPair(pair: [number, number] | null): void;
}

function Compared({ work, versions, pair, setPair }: ComparedProps) {
  const now = useStore(work.store, (state) => state.design);
  const system = useStore(work.store, (state) => state.system);
  const named = (n: number) => {
    const version = versions.find((one) => one.n === n);
    return version ? { name: version.name, design: version.design } : { name: 'now', design: now };
  };
  const [before, after] = pair.map(named) as [ReturnType<typeof named>, ReturnType<typeof named>];
  return (
    <section aria-label="Comparison" className="comparison">
      <p className="buttons">
        {(['From', 'to'] as const).map((label, i) => (
          <label key={label}>
            {label}{' '}
            <select
              value={pair[i]}
              onChange={({ target }) => {
                const n = Number(target.value);
                setPair(i === 0 ? [n, pair[1]] : [pair[0], n]);
              }}
            >
              {versions.map((version) => (
                <option key={version.n} value={version.n}>
                  {version.name}
                </option>
              ))}
              <option value={NOW}>now</option>
            </select>
          </label>
        ))}
        <button type="button" onClick={() => setPair(null)}>
          Close
        </button>
      </p>
      <Comparison before={before} after={after} system={system} />
    </section>
  );
}

function useVersions(work: Work, id: string): { versions: readonly Version[]; refresh(): void } {
  const [versions, setVersions] = useState<readonly Version[]>([]);
  const refresh = useCallback(() => {
    work.keeper!.shelf.versions(id).then(setVersions, () => setVersions([]));
  }, [work, id]);
  useEffect(refresh, [refresh]);
  return { versions, refresh };
}
