import type { BenchSession } from '../session/session';
import { chosenRun } from '../session/state';
import { noLooks, type LookName } from '@/shared/line/looks';
import { nudgeOf, type SingleKeyAct } from './keys';
import { setZoom } from './pointer';

type Around = {
  /** Moves the focus to a gap. */
  focusGap(pair: number): void;
  /** Starts typing a number with this character; '' only moves the focus there. */
  typeNumber(first: string): void;
  showKeys(): void;
  /** Starts or ends going through the sitting again. */
  watchAgain(): void;
  singleKeys(): ReadonlyMap<string, SingleKeyAct>;
};

/** Every key of the bench. Returns a function that removes the listeners. */
export function attachKeyboard(root: HTMLElement, session: BenchSession, around: Around): () => void {
  let holding = false;

  const pressed = (event: KeyboardEvent, anywhere = false) => {
    if (event.defaultPrevented || event.isComposing) return;
    const target = event.target as HTMLElement;
    const onGap = anywhere || target.matches('[data-gap]');
    if (isTextField(target)) return;
    if (isUndoKey(event))
      return answer(event, () => (event.shiftKey || event.key.toLowerCase() === 'y' ? session.redo() : session.undo()));
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (onGap && gapKey(event)) {
      end(event);
      return event.preventDefault();
    }
    // Controls keep their own keys: a select jumps by letters.
    if (target.matches('select') || !session.store.get().singleKeys) return;
    const act = around.singleKeys().get(event.key.toLowerCase());
    if (act) answer(event, () => perform(act, event));
  };

  /** True when the key belongs to the gap. */
  function gapKey(event: KeyboardEvent): boolean {
    const { chosen, history } = session.store.get();
    const by = nudgeOf(event.key);
    if (by !== 0) {
      holding = true;
      session.follow({ kind: 'nudge', run: chosenRun(session.store.get()), by }, 'here');
      return true;
    }
    switch (event.key) {
      case 'Enter':
        choose(chosen.head + (event.shiftKey ? -1 : 1), false);
        return true;
      case 'Home':
        choose(0, event.shiftKey);
        return true;
      case 'End':
        choose(Infinity, event.shiftKey);
        return true;
      case 'Delete':
      case 'Backspace':
        session.edit({ kind: 'reset', run: chosenRun(session.store.get()) });
        return true;
      case 'Escape':
        if (history.gesture) session.cancelGesture();
        else around.typeNumber('');
        return true;
    }
    if (!/^[0-9+\-\u2212]$/.test(event.key)) return false;
    around.typeNumber(event.key);
    return true;
  }

  function choose(pair: number, extend: boolean): void {
    session.choose(pair, extend);
    around.focusGap(session.store.get().chosen.head);
  }

  function perform(act: SingleKeyAct, event: KeyboardEvent): void {
    const { chosen, zoom } = session.store.get();
    if (act === 'gap before') choose(chosen.head - 1, event.shiftKey);
    else if (act === 'gap after') choose(chosen.head + 1, event.shiftKey);
    else if (act === 'true size') session.store.set({ atTrue: !session.store.get().atTrue });
    else if (act === 'larger') setZoom(session, zoom * 1.25);
    else if (act === 'smaller') setZoom(session, zoom / 1.25);
    else if (act === 'show keys') around.showKeys();
    else if (act === 'watch again') around.watchAgain();
    else if (act === 'show built-in')
      session.store.set({ shown: session.store.get().shown === 'mine' ? 'built-in' : 'mine' });
    else if (event.repeat) return;
    else session.toggleLook(act.slice('look '.length) as keyof typeof noLooks & LookName);
  }

  /** A key pressed before anything was chosen belongs to the chosen gap: the bench can be used from the first moment. */
  const nowhere = (event: KeyboardEvent) => {
    const target = event.target as HTMLElement;
    if ((target !== document.body && target.id !== 'main') || event.key === 'Tab') return;
    pressed(event, true);
    if (event.defaultPrevented && !root.contains(document.activeElement))
      around.focusGap(session.store.get().chosen.head);
  };

  const released = (event: KeyboardEvent) => {
    if (!holding || nudgeOf(event.key) === 0) return;
    end(event);
    holding = false;
    session.endGesture();
  };
  const left = () => {
    if (!holding) return;
    holding = false;
    session.endGesture();
  };

  const within = (event: KeyboardEvent) => pressed(event);
  root.addEventListener('keydown', within);
  document.addEventListener('keydown', nowhere);
  root.addEventListener('keyup', released);
  root.addEventListener('focusout', left);
  window.addEventListener('blur', left);
  return () => {
    root.removeEventListener('keydown', within);
    document.removeEventListener('keydown', nowhere);
    root.removeEventListener('keyup', released);
    root.removeEventListener('focusout', left);
    window.removeEventListener('blur', left);
  };
}

function answer(event: KeyboardEvent, act: () => void): void {
  event.preventDefault();
  act();
}

/**
 * The key has been handled. If the event went on, React would look for a selection at each key, which forces a layout.
 */
function end(event: KeyboardEvent): void {
  event.stopPropagation();
}

function isTextField(target: HTMLElement): boolean {
  return target.matches(
    'textarea, [contenteditable], input:not([type=range], [type=checkbox], [type=radio], [type=button])',
  );
}

const isUndoKey = (event: KeyboardEvent): boolean =>
  (event.ctrlKey || event.metaKey) && !event.altKey && ['z', 'y'].includes(event.key.toLowerCase());
