import { createRoot } from 'react-dom/client';
import { App } from './app/App.tsx';
import { openingDesign } from './app/demos.ts';
import { createWork } from './app/store.ts';
import './app/style.css';

createRoot(document.getElementById('root')!).render(<App work={createWork(openingDesign(), window.localStorage)} />);
