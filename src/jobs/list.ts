/** What is done to a job from the list, at work or not. False: another window has it open. */
import type { Keeper } from './keeper.ts';
import { copyOf, type OpenJob } from './shelf.ts';

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
export async function duplicateJob(keeper: Keeper, id: string, title: string): Promise<string | null> {
  const opened = await keeper.shelf.open(id);
  if (!opened.ok) return null;
  const copy = keeper.device.newName();
  await keeper.shelf.add([{ id: copy, found: copyOf(opened.job.found, title, keeper.device.now()) }]);
  for (const { name, design, made } of await keeper.shelf.versions(id))
    await keeper.shelf.nameVersion(copy, name, design, made);
  return copy;
}

export const putJobAway = (keeper: Keeper, id: string, away: boolean): Promise<boolean> =>
  keeper.briefly(id, () => keeper.shelf.putAway(id, away));

/** Only marked, so that it can be brought back; `emptied` takes the marked ones off for good. */
export const deleteJob = (keeper: Keeper, id: string): Promise<boolean> =>
  keeper.briefly(id, () => keeper.shelf.delete(id, keeper.device.now()));

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
