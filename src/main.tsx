import { createRoot } from 'react-dom/client';
import { App } from './app/App.tsx';
import { exampleNamed, isOwn } from './app/state/opening.ts';
import { createWork } from './app/state/store.ts';
import { thisDevice } from './jobs/device.ts';
import { createKeeper } from './jobs/keeper.ts';
import './app/frame/style.css';

const keeper = createKeeper(thisDevice(), isOwn);

void keeper.start().then(async (started) => {
  const example = await exampleNamed(started.example);
  const initial = started.position === null ? example : { ...example, position: started.position };
  // What cannot be read is told where the jobs are, and not by showing something else.
  if (started.unreadable && !window.location.hash.startsWith('#job=')) window.location.hash = '#jobs';
  // What was deleted long ago goes once the page stands.
  void import('./jobs/list.ts').then(({ sweepDeleted }) => sweepDeleted(keeper)).catch(() => {});
  createRoot(document.getElementById('root')!).render(<App work={createWork(initial, keeper, started)} />);
});
