import { createRoot } from 'react-dom/client';
import { App } from './app/App.tsx';
import { isOwn, openingDesign } from './app/state/demos.ts';
import { createWork } from './app/state/store.ts';
import { thisDevice } from './jobs/device.ts';
import { createKeeper } from './jobs/keeper.ts';
import './app/frame/style.css';

createRoot(document.getElementById('root')!).render(
  <App work={createWork(openingDesign(), createKeeper(thisDevice(), isOwn))} />,
);
