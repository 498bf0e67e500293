import type { DemonstrationStep } from '@/shared/schemas/demonstration';
import type { SingleKeyAct } from '../hands/keys';
import { setZoom } from '../hands/pointer';
import type { Look } from '@/app/_line/looks';
import type { BenchSession } from '../session/session';
import { replayTo } from './replay';

/**
 * The keys of a replay: those that go from gap to gap on the bench go from step to step here. Enter, Home and End only on
 * the sheet itself, single keys anywhere but in fields. Gives back a function that ends it.
 */
export function attachReplayKeys(
  sheet: HTMLElement,
  session: BenchSession,
  steps: readonly DemonstrationStep[],
  around: { singleKeys: ReadonlyMap<string, SingleKeyAct>; mayPlay: boolean; showKeys(): void },
): () => void {
  const to = (at: number) => {
    session.store.set({ playing: false });
    replayTo(session, steps, at);
  };
  const at = () => session.store.get().replayed ?? 0;

  function perform(act: SingleKeyAct): void {
    const { zoom, playing, shown } = session.store.get();
    if (act === 'gap after') to(at() + 1);
    else if (act === 'gap before') to(at() - 1);
    else if (act === 'watch again') {
      if (!around.mayPlay) return;
      if (!playing && at() >= steps.length) to(0);
      session.store.set({ playing: !playing });
    } else if (act === 'larger') setZoom(session, zoom * 1.25);
    else if (act === 'smaller') setZoom(session, zoom / 1.25);
    else if (act === 'show keys') around.showKeys();
    else if (act === 'show built-in') session.store.set({ shown: shown === 'mine' ? 'built-in' : 'mine' });
    else session.toggleLook(act.slice('look '.length) as Look);
  }

  const pressed = (event: KeyboardEvent) => {
    const target = event.target as HTMLElement;
    if (event.defaultPrevented || event.isComposing || event.ctrlKey || event.metaKey || event.altKey) return;
    const ownKeys: Record<string, number> = { Enter: at() + (event.shiftKey ? -1 : 1), Home: 0, End: steps.length };
    const own = target === sheet ? ownKeys[event.key] : undefined;
    if (own !== undefined) {
      event.preventDefault();
      return to(own);
    }
    if (target.matches('input, textarea, select, [contenteditable]') || event.repeat || !session.store.get().singleKeys)
      return;
    const act = around.singleKeys.get(event.key.toLowerCase());
    if (!act) return;
    event.preventDefault();
    perform(act);
  };
  window.addEventListener('keydown', pressed);
  return () => window.removeEventListener('keydown', pressed);
}
