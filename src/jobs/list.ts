/** What is done to a job from the list, at work or not. False: another window has it open. */
import type { Keeper } from './keeper.ts';
import type { Kept } from './record.ts';
import { copyOf, type Head, type OpenJob, type Version } from './shelf.ts';

export async function renameJob(keeper: Keeper, id: string, title: string): Promise<boolean> {
  return keeper.briefly(id, async () => {
    const opened = await keeper.shelf.open(id);
    if (!opened.ok) return;
    const { found, history, place } = opened.job;
    const design = { ...found.design, title };
    history.push(found.design, design);
    await keeper.shelf.save(id, { ...found, design, first: history.first, at: history.at }, history, place);
  });
}

/** @returns the copy's id; null where there is nothing that could be copied */
export async function duplicateJob(keeper: Keeper, id: string): Promise<string | null> {
  const opened = await keeper.shelf.open(id);
  if (!opened.ok) return null;
  // As it is kept by now, which a list on the screen may not show yet.
  const title = titleOfCopy(opened.job.found.design.title ?? 'untitled', await keeper.shelf.heads());
  const copy = keeper.device.newName();
  await keeper.shelf.add([{ id: copy, found: copyOf(opened.job.found, title, keeper.device.now()) }]);
  for (const { name, design, made } of await keeper.shelf.versions(id))
    await keeper.shelf.nameVersion(copy, name, design, made);
  return copy;
}

/** A job of its own begun with a named version of one that cannot be read, all of whose versions come along. */
export async function jobOfVersion(
  keeper: Keeper,
  { id, title }: Pick<Head, 'id' | 'title'>,
  { name, design }: Version,
  as: Omit<Kept, 'design' | 'unfinished'>,
): Promise<string> {
  const { shelf, device } = keeper;
  const [found, now] = [device.newName(), device.now()];
  const kept = { ...as, unfinished: {}, made: now, worked: now, first: 0, at: 0 };
  await shelf.add([{ id: found, found: { ...kept, design: { ...design, title: `${title}, ${name}`.slice(0, 200) } } }]);
  for (const version of await shelf.versions(id))
    await shelf.nameVersion(found, version.name, version.design, version.made);
  return found;
}

/** No two of one title: My spindle, copy; My spindle, copy 2. */
function titleOfCopy(title: string, heads: readonly Head[]): string {
  const stem = `${title.replace(/, copy( \d+)?$/, '')}, copy`;
  const isFree = (one: string) => heads.every((head) => head.title !== one);
  for (let n = 1; ; n++) {
    const one = n === 1 ? stem : `${stem} ${n}`;
    if (isFree(one)) return one;
  }
}

export const putJobAway = (keeper: Keeper, id: string, away: boolean): Promise<boolean> =>
  keeper.briefly(id, () => keeper.shelf.putAway(id, away));

/** Only marked, so that it can be brought back; `emptied` takes the marked ones off for good. */
export const deleteJob = (keeper: Keeper, id: string): Promise<boolean> =>
  keeper.briefly(id, () => keeper.shelf.delete(id, keeper.device.now()));

/** ms */
const DAY = 86_400_000;
const DAYS_KEPT = 30;
/** ms a deleted job can be brought back for; after that it is taken off the device, photographs and all. */
export const KEPT_DELETED = DAYS_KEPT * DAY;

/** Takes deleted jobs off for good whose time is over, but none that another window holds. */
export async function sweepDeleted(keeper: Keeper): Promise<void> {
  const now = keeper.device.now();
  const over = ({ deleted }: Head) => deleted !== null && now - deleted > KEPT_DELETED;
  const ids = (await keeper.shelf.heads()).filter(over).map(({ id }) => id);
  let gone = false;
  for (const id of ids)
    await keeper.briefly(id, async () => {
      // Once it is held: it may have been brought back meanwhile.
      const head = (await keeper.shelf.heads()).find((one) => one.id === id);
      if (head && over(head)) await keeper.shelf.remove([id]);
      gone = true;
    });
  if (gone) await keeper.shelf.photographs.sweep(now);
}

/** With the photographs that no other job has. */
export async function removeForGood(keeper: Keeper, ids: readonly string[]): Promise<void> {
  await keeper.shelf.remove(ids);
  await keeper.shelf.photographs.sweep(keeper.device.now());
}

export const bringBackJob = (keeper: Keeper, id: string): Promise<boolean> =>
  keeper.briefly(id, () => keeper.shelf.delete(id, null));

/** A job as a screen that only looks at it needs it. */
export async function lookAt(
  keeper: Keeper,
  id: string,
): Promise<OpenJob | { why: string; file: { name: string; text: string } } | null> {
  const opened = await keeper.shelf.open(id);
  if (opened.ok) return opened.job;
  return opened.id === null ? null : { why: opened.why, file: opened.file };
}
