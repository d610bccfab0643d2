/** Several jobs in one file, to go to another device: their states and named versions; their undo stays behind. */
import type { DesignError } from '../design/rules.ts';
import { validateDesign } from '../design/validate.ts';
import type { Keeper } from './keeper.ts';
import { type OpenedJob, readRecord, recordText } from './record.ts';
import type { Version } from './shelf.ts';

interface Moved {
  found: OpenedJob;
  versions: Omit<Version, 'n'>[];
  /** it was put away there, and is here */
  away: boolean;
}

const KEY = 'conepairJobs';
const VERSION = 1;
/** Characters and jobs of such a file. */
const LONGEST_TEXT = 64_000_000;
const MOST_JOBS = 500;
/** Characters of a title within a path. */
const LONGEST_TITLE = 60;

/** The file of all jobs that can be read and were not deleted, and the titles of those that cannot be. */
export async function fileOfJobs({ shelf }: Keeper): Promise<{ text: string; jobs: number; left: string[] }> {
  const heads = (await shelf.heads()).filter(({ deleted }) => deleted === null);
  const jobs: unknown[] = [];
  const left: string[] = [];
  for (const { id, title, away } of heads) {
    const opened = await shelf.open(id);
    if (!opened.ok) {
      left.push(title);
      continue;
    }
    const versions = (await shelf.versions(id)).map(({ name, made, design }) => ({ name, made, design }));
    jobs.push({ ...JSON.parse(recordText({ ...opened.job.found, first: 0, at: 0 })), versions, ...(away && { away }) });
  }
  return { text: `${JSON.stringify({ [KEY]: VERSION, jobs })}\n`, jobs: jobs.length, left };
}

/** `errors`: what is wrong with the jobs that cannot be taken in, if any; each is whole or is not taken. */
type Many = { ok: true; jobs: Moved[]; errors: DesignError[] } | { ok: false; errors: DesignError[] };

/** All sound jobs of such a text, or what is wrong where there is none. */
export function readJobs(text: string): Many {
  const refused = (message: string, path = ''): Many => ({ ok: false, errors: [{ path, message }] });
  if (text.length > LONGEST_TEXT)
    return refused(`the file has ${text.length} characters; a file of jobs has ${LONGEST_TEXT} at most`);
  let raw: { [KEY]?: unknown; jobs?: unknown } | null;
  try {
    raw = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch {
    return refused('the file is not whole: it was cut off or altered. Save it once more on the device it came from');
  }
  if (raw?.[KEY] !== VERSION)
    return refused(
      `found ${JSON.stringify(raw?.[KEY])?.slice(0, 40) ?? 'nothing'}; this program reads version ${VERSION}: take a newer one`,
      KEY,
    );
  if (!Array.isArray(raw.jobs) || raw.jobs.length > MOST_JOBS)
    return refused(`a list of at most ${MOST_JOBS} jobs is expected`, 'jobs');
  const read = raw.jobs.map(readMoved);
  const errors = read.flatMap((one) => (one.ok ? [] : one.errors));
  const jobs = read.flatMap((one) => (one.ok ? [one.job] : []));
  return errors.length > 0 && jobs.length === 0 ? { ok: false, errors } : { ok: true, jobs, errors };
}

const REMEDY = 'It is still on the device it came from: save it there once more, as a file of its own';

type One = { ok: true; job: Moved } | { ok: false; errors: DesignError[] };

function readMoved(raw: unknown, place: number): One {
  const title = (raw as { design?: { title?: unknown } } | null)?.design?.title;
  const path = `jobs[${place}]${typeof title === 'string' ? ` “${title.slice(0, LONGEST_TITLE)}”` : ''}`;
  const record = recordOf(raw);
  if (!record.ok) return { ok: false, errors: [{ path, message: `${record.why}. ${REMEDY}` }] };
  const { versions = [], away } = raw as { versions?: unknown; away?: unknown };
  const found: Moved['versions'] = [];
  for (const [n, version] of (Array.isArray(versions) ? versions : []).entries()) {
    const { name, made, design } = (version ?? {}) as Record<string, unknown>;
    const result = validateDesign(design);
    if (!result.ok || typeof name !== 'string')
      return {
        ok: false,
        errors: [{ path: `${path}.versions[${n}]`, message: `no version of a design stands here. ${REMEDY}` }],
      };
    found.push({ name: name.slice(0, 200), made: typeof made === 'number' ? made : 0, design: result.design });
  }
  return { ok: true, job: { found: { ...record.found, first: 0, at: 0 }, versions: found, away: away === true } };
}

/** What is nested deeper than any job cannot even be written down. */
function recordOf(raw: unknown): ReturnType<typeof readRecord> {
  try {
    return readRecord(JSON.stringify(raw));
  } catch {
    return { ok: false, why: 'it is damaged', file: { name: '', text: '' } };
  }
}

/** Puts them beside the jobs that are here; none of these is touched. */
export async function takeIn({ shelf, device }: Keeper, jobs: readonly Moved[]): Promise<void> {
  const named = jobs.map((job) => ({ ...job, id: device.newName() }));
  await shelf.add(named.map(({ id, found }) => ({ id, found })));
  for (const { id, away } of named) if (away) await shelf.putAway(id, true);
  for (const { id, versions } of named)
    for (const { name, design, made } of versions) await shelf.nameVersion(id, name, design, made);
}
