/** What the doubt comes from, a row a surface or a cut, with what halving it would gain. */
import type { MattersReport } from '../../../report/odds/definition.ts';

export interface MatterRow {
  name: string;
  by: 'measuring' | 'cutting';
  /** of the variance; null where it is not told for this one alone */
  share: { share: number; low: number; high: number } | null;
  gain: MattersReport['gains'][number] | null;
}

type Entry = MattersReport['sensitivity'][number];

/** More than these have no names of their own: they are as good as everything. */
const NAMED = 2;

const isCut = ({ of }: Pick<Entry, 'of'>) => of === 'stock' || of === 'face';
const surfaceOf = ({ seat, part, face }: { seat: string; part: string; face?: string | undefined }) =>
  face ?? `${seat} ${part}`;
const nameOf = ({ together, ...entry }: Entry) => {
  const names = [...new Set((together ?? [entry]).map(surfaceOf))];
  return names.length > NAMED ? `${names.length} surfaces tied together by what was read` : names.join(' with ');
};

/** The greatest share first. */
export function matterRows({ sensitivity, gains }: MattersReport): MatterRow[] {
  const rows = new Map<string, MatterRow>();
  for (const entry of sensitivity) {
    const by = isCut(entry) ? 'cutting' : 'measuring';
    const name = nameOf(entry);
    const known = rows.get(`${by} ${name}`);
    const sum = (of: 'share' | 'low' | 'high') => (known?.share?.[of] ?? 0) + entry[of];
    rows.set(`${by} ${name}`, {
      name,
      by,
      share: { share: sum('share'), low: sum('low'), high: sum('high') },
      gain: null,
    });
  }
  for (const gain of gains) {
    const name = surfaceOf(gain);
    const key = `${gain.by} ${name}`;
    rows.set(key, { ...(rows.get(key) ?? { name, by: gain.by, share: null }), gain });
  }
  return [...rows.values()].sort((a, b) => (b.share?.share ?? -1) - (a.share?.share ?? -1));
}
