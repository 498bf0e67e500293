import { spacingsOf } from '@/shared/demonstration/steps';
import { startSync } from '@/shared/editing/sync';
import type { BenchProps, DemonstrationProps } from '../props';
import { noLooks } from '@/shared/line/looks';
import { readScreen } from '../session/screen';
import type { BenchSession } from '../session/session';
import type { BenchState } from '../session/state';
import { createStore } from '../session/store';

/** A bench on which nothing can be changed: the steps of a recording take the place of a sitting's. */
export function openReplay({
  recorded,
  tells,
  ...given
}: DemonstrationProps & Pick<BenchProps, 'tells'>): BenchSession {
  const steps = spacingsOf(recorded);
  const last = steps[steps.length - 1]!;
  const props: BenchProps = {
    ...given,
    mode: 'trial',
    spacing: last,
    version: 0,
    draftId: 'demonstration',
    tells,
    save: null,
  };
  const pairs = props.pack.letters.length - 1;
  const store = createStore<BenchState>({
    history: { steps, cursor: steps.length - 1, gesture: null },
    sync: startSync({ version: 0, document: last }),
    chosen: { anchor: 0, head: 0 },
    byKeys: false,
    looks: noLooks,
    shown: 'mine',
    overlay: null,
    overlayMode: 'under',
    otherTurn: false,
    replayed: 0,
    playing: false,
    screen: readScreen(),
    room: null,
    atTrue: false,
    zoom: props.accommodations?.workingView ?? 1,
    singleKeys: !props.accommodations?.singleKeysOff,
    deviceStores: true,
  });
  const nothing = () => undefined;
  return {
    props,
    store,
    edit: nothing,
    follow: nothing,
    endGesture: nothing,
    cancelGesture: nothing,
    undo: nothing,
    redo: nothing,
    settleConflict: nothing,
    start: () => nothing,
    choose(pair, extend = false) {
      const head = Math.max(0, Math.min(pairs - 1, pair));
      store.set({ chosen: { anchor: extend ? store.get().chosen.anchor : head, head } });
    },
    toggleLook: (look) => store.set({ looks: { ...store.get().looks, [look]: !store.get().looks[look] } }),
  };
}
