/** The named versions of a job whose state cannot be read: they are whole, and any of them goes on as a job. */
import { useEffect, useState } from 'react';
import { jobOfVersion } from '../../../jobs/list.ts';
import { fileText, nameOf } from '../../../jobs/record.ts';
import type { Head, Version } from '../../../jobs/shelf.ts';
import { offer } from '../../state/files.ts';
import type { Work } from '../../state/store.ts';

interface Props {
  work: Work;
  head: Head;
  /** goes on with a job */
  open(id: string): void;
}

export function Rescue({ work, head, open }: Props) {
  const [versions, setVersions] = useState<readonly Version[]>([]);
  const keeper = work.keeper!;
  useEffect(() => {
    keeper.shelf.versions(head.id).then(setVersions, () => {});
  }, [keeper, head.id]);
  if (versions.length === 0) return null;
  const goOn = async (version: Version) => {
    const { system, factor } = work.store.getState();
    open(await jobOfVersion(keeper, head, version, { system, factor }));
  };
  return (
    <section className="versions" aria-label={`Versions of ${head.title} that can be read`}>
      <p>Its named versions are whole:</p>
      <ul className="plain">
        {versions.map((version) => (
          <li key={version.n}>
            <span>
              <strong>{version.name}</strong> <span className="fine">{WHEN.format(version.made)}</span>
            </span>
            <span className="buttons">
              <button type="button" className="main" onClick={() => void goOn(version)}>
                Go on with it as a job
              </button>
              <button
                type="button"
                onClick={() =>
                  offer(
                    `${nameOf(`${head.title} ${version.name}`)}.conepair.json`,
                    fileText(version.design),
                    'application/json',
                  )
                }
              >
                Save it as a file
              </button>
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}

const WHEN = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' });
