import { createRoot } from 'react-dom/client';
import '@/app/globals.css';
import { GuidedWorkbench } from '@/app/_bench/guide/guided-workbench';
import { Sitting } from '@/app/_bench/practice/sitting';
import { Workbench } from '@/app/_bench/workbench';
import type { BenchProps } from '@/app/_bench/props';
import type { BenchSession } from '@/app/_bench/session/session';

/** The bench on a page of its own, with what a real page would give it: for tests, figures and pictures. */
const props = JSON.parse(document.getElementById('props')?.textContent ?? '{}') as BenchProps & {
  guided?: boolean;
  practice?: boolean;
};
const root = document.getElementById('main');
const note = (name: string, value: unknown) => Object.assign(window, { [name]: value });
if (root) {
  createRoot(root).render(
    props.practice ? (
      <>
        <h1>Practice</h1>
        <Sitting packs={[props.pack]} personKey={props.personKey} results={[]} save={props.save} />
      </>
    ) : props.guided ? (
      <GuidedWorkbench {...props} onDone={(how) => void note('guideEnded', how)} />
    ) : (
      <Workbench
        {...props}
        place={<h1>Bench</h1>}
        onSession={(session: BenchSession) => note('benchSession', session)}
      />
    ),
  );
}
