'use client';
import dynamic from 'next/dynamic';
import { createContext, useContext } from 'react';
import { LineDrawing } from '@/app/_line/LineDrawing';
import { SheetFrame } from '@/app/_ui/SheetFrame';
import { inBrowser } from './in-browser';
import type { BenchProps, DemonstrationProps } from './props';

type Props = DemonstrationProps & Pick<BenchProps, 'tells'>;

/** While its code is loading, the page shows the line as it was at the start, drawn by the server. */
const Waiting = createContext<Props | null>(null);

const ReplayTable = dynamic(
  () => import('./replay/replay-table').then((module) => inBrowser(module.ReplayTable, StillLine)),
  { loading: StillLine },
);

/** A replay of a recorded demonstration. See props.ts for what a page gives it. */
export function Demonstration(props: Props) {
  return (
    <Waiting value={props}>
      <ReplayTable {...props} />
    </Waiting>
  );
}

function StillLine() {
  const props = useContext(Waiting);
  if (!props) return null;
  return (
    <SheetFrame ground={props.ground} caption="Loading the steps …">
      <LineDrawing pack={props.pack} spacing={props.recorded.start} size={props.size} />
    </SheetFrame>
  );
}
