/** Rules of the record of a job: days that there are, entries that say something, a history that has room for them. */
type Loose = Record<string, unknown>;
type Say = (path: string, message: string) => void;

const object = (x: unknown): Loose => (typeof x === 'object' && x !== null && !Array.isArray(x) ? (x as Loose) : {});
const list = (x: unknown): unknown[] => (Array.isArray(x) ? x : []);

/** Whether a date of the right form is one that the calendar and the clock have. */
export function isRealDate(text: string): boolean {
  const [, year, month, day] = /^(\d{4})-(\d\d)-(\d\d)/.exec(text)?.map(Number) ?? [];
  if (year === undefined) return false;
  const at = new Date(0);
  at.setUTCFullYear(year, month! - 1, day);
  const isDay = at.getUTCFullYear() === year && at.getUTCMonth() === month! - 1 && at.getUTCDate() === day;
  const clock =
    /T(\d\d):(\d\d)(?::(\d\d))?/
      .exec(text)
      ?.slice(1)
      .map((part) => Number(part ?? 0)) ?? [];
  const [hour = 0, minute = 0, second = 0] = clock;
  return isDay && hour < 24 && minute < 60 && second < 60;
}

const FORM = /^\d{4}-\d\d-\d\d(T[\d:.]+(Z|[+-]\d\d:\d\d)?)?$/;

export function recordRules(design: Loose, say: Say): void {
  const trials = list(object(design.cut).trials);
  const inTurn = (entries: unknown, path: string) =>
    list(entries).forEach((entry, i) => {
      const { date, after } = object(entry);
      if (typeof date === 'string' && FORM.test(date) && !isRealDate(date))
        say(`${path}[${i}].date`, `found "${date.slice(0, 40)}"; there is no such day or time`);
      // An entry cannot have been made after more trials than there are.
      if (typeof after === 'number' && after > trials.length)
        say(`${path}[${i}].after`, `found ${after}, but ${trialsText(trials.length)} written down`);
    });
  inTurn(design.readings, 'readings');
  inTurn(trials, 'cut.trials');
  inTurn(design.record, 'record');
  list(design.record).forEach((entry, i) => {
    const { note, photograph } = object(entry);
    if (photograph === undefined && (note === undefined || (typeof note === 'string' && note.trim() === '')))
      say(`record[${i}]`, 'found neither a note nor a photograph; an entry needs one of the two');
  });
}

const trialsText = (count: number) =>
  count === 0 ? 'no trial is' : count === 1 ? 'only 1 trial is' : `only ${count} trials are`;
