'use client';
import { Button } from '@/app/_ui/Button';
import type { Run } from '@/shared/critique/run';
import { LineWhite } from '@/app/_line/LineWhite';
import { LineWhy } from '@/app/_line/LineWhy';
import type { Showing } from '@/app/_line/LineDrawing';
import { threeAt, type Looks } from '@/app/_line/looks';
import { opposite } from '@/app/_line/inks';
import type { Pack } from '@/shared/schemas/pack';
import type { Ground, Spacing } from '@/shared/schemas/spacing';
import { lookKeys, type LooksInHand } from './use-looks';
import style from './desk.module.css';

/** The ways of looking as words that are switched on and off; all go together. The keys are v and the letter shown. */
export function LooksMenu({ looks }: { looks: LooksInHand }) {
  return (
    <details className="more" open={looks.asking || undefined}>
      <summary>
        Ways of looking <kbd aria-hidden="true">v</kbd>
      </summary>
      <div className="actions" role="group" aria-label="Ways of looking">
        {lookKeys.map(({ look, key, name, says }) => (
          <Button
            key={look}
            small
            aria-pressed={looks.looks[look]}
            aria-keyshortcuts={`v ${key}`}
            title={says}
            onClick={() => looks.toggle(look)}
          >
            {name}{' '}
            <kbd className={style.lookKey} aria-hidden="true">
              {key}
            </kbd>
          </Button>
        ))}
        {looks.any && (
          <Button small kind="text" onClick={looks.clear}>
            Plain again
          </Button>
        )}
      </div>
    </details>
  );
}

/** What a drawing needs to show these looks, with the pair that is chosen. */
export function showingOf(looks: Looks, run: Run | null, letterCount: number): Showing {
  return {
    hidden: looks.hidden,
    blur: looks.blur,
    head: looks.head,
    mirror: looks.mirror,
    guides: looks.guides,
    ...(looks.three && { open: threeAt(run?.first ?? 0, letterCount) }),
  };
}

export const groundOf = (looks: Looks, ground: Ground): Ground => (looks.opposite ? opposite(ground) : ground);

/** White made visible and the edges of the chosen gap, as far as they are asked for: for the `behind` of a drawing. */
export function Looked({ pack, spacing, looks, run }: { pack: Pack; spacing: Spacing; looks: Looks; run: Run | null }) {
  const between = looks.white || looks.hidden;
  return (
    <>
      {(between || looks.counters) && (
        <LineWhite
          pack={pack}
          spacing={spacing}
          between={between}
          inside={looks.counters}
          open={looks.three ? threeAt(run?.first ?? 0, pack.letters.length) : undefined}
        />
      )}
      {looks.why && run && <LineWhy pack={pack} spacing={spacing} pair={run.first} />}
    </>
  );
}
