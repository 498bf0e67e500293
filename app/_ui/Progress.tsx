import { counted } from '@/shared/text/number';

/** How far something has come, in words first: “7 of 12 lines set”. The bar is only a picture of it. */
export function Progress({ done, of, what, verb = 'done' }: { done: number; of: number; what: string; verb?: string }) {
  const words = done >= of && of > 0 ? `all ${counted(of, what)} ${verb}` : `${done} of ${counted(of, what)} ${verb}`;
  return (
    <span className="progress">
      <progress value={done} max={Math.max(of, 1)} aria-hidden="true" /> <span>{words}</span>
    </span>
  );
}
