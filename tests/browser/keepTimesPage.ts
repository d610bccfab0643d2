/** The part of the benchmark of keeping that runs in a page. */
import demo from '../../assets/designs/steep-first.conepair.json';
import type { Design } from '../../src/design/definition.ts';
import { validateDesign } from '../../src/design/validate.ts';
import { thisDevice } from '../../src/jobs/device.ts';
import { createHistory } from '../../src/jobs/history.ts';
import { createKeeper } from '../../src/jobs/keeper.ts';
import { createShelf } from '../../src/jobs/shelf.ts';

/** The first demo, each line with a profile of so many points. */
function designOf(points: number): Design {
  const read = validateDesign(demo);
  if (!read.ok) throw new Error('no demo');
  const withProfile = <S extends Design['seats'][number]['bush']>(surface: S): S => ({
    ...surface,
    profile: Array.from({ length: points }, (_, i) => [
      surface.from + ((surface.to - surface.from) * i) / (points - 1),
      1e-7 * ((i * 7919) % 1000),
    ]),
  });
  const { seats, ...rest } = read.design;
  if (points === 0) return read.design;
  return {
    ...rest,
    seats: seats.map((seat) => ({ ...seat, journal: withProfile(seat.journal), bush: withProfile(seat.bush) })),
  };
}

/** Saves one job so often, a step each; then it can be opened. */
export async function saves(points: number, count: number): Promise<{ id: string; size: number }> {
  const keeper = createKeeper(thisDevice(NAME), () => true);
  await keeper.start();
  const history = createHistory();
  const id = keeper.begin(history, null);
  let design = designOf(points);
  for (let i = 1; i <= count; i++) {
    const next = { ...design, position: i / 1000 };
    history.push(design, next);
    design = next;
    keeper.keep({ design, system: 'metric', factor: 400, unfinished: {} });
    await keeper.flush();
  }
  const head = (await keeper.shelf.heads()).find((one) => one.id === id)!;
  return { id, size: head.size };
}

/** Opens it so often, from the store alone. */
export async function opens(id: string, steps: number, count: number): Promise<void> {
  const { tables } = await thisDevice(NAME).tables(() => {});
  const shelf = createShelf(tables);
  for (let i = 0; i < count; i++) {
    const opened = await shelf.open(id);
    if (!opened.ok || opened.job.history.at - opened.job.history.first !== steps) throw new Error('not opened whole');
  }
}

const NAME = 'bench';
