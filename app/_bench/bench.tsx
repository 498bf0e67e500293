'use client';
import dynamic from 'next/dynamic';
import { createContext, useContext } from 'react';
import { LineDrawing } from '@/app/_line/LineDrawing';
import { SheetFrame } from '@/app/_ui/SheetFrame';
import { inBrowser } from './in-browser';
import type { BenchProps } from './props';

/** While the bench's own code is loading, the page already shows the line as drawn by the server. */
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
    <SheetFrame ground={props.ground} caption="Loading the bench …">
      <LineDrawing pack={props.pack} spacing={props.spacing} size={props.size} />
    </SheetFrame>
  );
}
