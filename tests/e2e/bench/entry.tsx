import { createRoot } from 'react-dom/client';
import '@/app/globals.css';
import { Workbench } from '@/app/_bench/workbench';
import type { BenchProps } from '@/app/_bench/props';

/** The bench on a page of its own, with what a real page would give it: for tests, figures and pictures. */
const props = JSON.parse(document.getElementById('props')?.textContent ?? '{}') as BenchProps;
const root = document.getElementById('main');
if (root) createRoot(root).render(<Workbench {...props} onSession={(session) => Object.assign(window, { benchSession: session })} />);
