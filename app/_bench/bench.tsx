'use client';
import dynamic from 'next/dynamic';
import { createContext, useContext } from 'react';
import { LineDrawing } from '@/app/_line/LineDrawing';
import { SheetFrame } from '@/app/_ui/SheetFrame';
import { inBrowser } from './in-browser';
import type { BenchProps } from './props';
import styles from './bench.module.css';

/** While the bench's own code is on its way the line is there already, drawn by the server. */
const Waiting = createContext<BenchProps | null>(null);

const Workbench = dynamic(() => import('./workbench').then((module) => inBrowser(module.Workbench, StillLine)), {
  loading: StillLine,
});

/** Where spacing is done. See props.ts for what a page gives it. */
export function Bench(props: BenchProps) {
  return (
    <Waiting value={props}>
      <Workbench key={`${props.personKey}/${props.draftId}`} {...props} />
    </Waiting>
  );
}

function StillLine() {
  const props = useContext(Waiting);
  if (!props) return null;
  return (
    <div className={styles.bench}>
      <div className={styles.bar} data-still="">
        {props.place}
        {props.onward}
      </div>
      <div className={styles.main}>
        <SheetFrame ground={props.ground} caption="Loading the bench …">
          <LineDrawing pack={props.pack} spacing={props.spacing} size={props.size} />
        </SheetFrame>
      </div>
    </div>
  );
}
