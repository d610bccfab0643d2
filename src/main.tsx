import { createRoot } from 'react-dom/client';
import { App } from './app/App.tsx';
import { isOwn, openingDesign } from './app/demos.ts';
import { createWork } from './app/store.ts';
import { thisDevice } from './jobs/device.ts';
import { createKeeper } from './jobs/keeper.ts';
import './app/style.css';

createRoot(document.getElementById('root')!).render(<App work={createWork(openingDesign(), createKeeper(thisDevice(), isOwn))} />);
