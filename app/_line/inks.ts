import type { Ground } from '@/shared/schemas/spacing';

/** Colours of the sheet, as CSS text. They depend on the ground and never on the theme. */
export type Inks = {
  readonly ink: string;
  readonly quiet: string;
  readonly rule: string;
  readonly warm: string;
  readonly cool: string;
  readonly mark: string;
  readonly note: string;
};

const known = new Map<Ground, Inks>();

/**
 * Read once per ground, from a sheet of that ground made for it: a sheet already on the page may still show the other
 * ground at that moment, and would give the wrong ink.
 */
export function inksOf(ground: Ground): Inks {
  const cached = known.get(ground);
  if (cached) return cached;
  const probe = Object.assign(document.createElement('div'), { className: `sheet sheet-${ground}`, hidden: true });
  document.body.append(probe);
  const style = getComputedStyle(probe);
  const token = (name: string) => style.getPropertyValue(`--sheet-${name}`).trim() || style.color;
  const inks = {
    ink: style.color,
    quiet: token('quiet'),
    rule: token('rule'),
    warm: token('warm'),
    cool: token('cool'),
    mark: token('mark'),
    note: token('note'),
  };
  probe.remove();
  known.set(ground, inks);
  return inks;
}

/** Colours of the ruler under the sheet, which follow the theme. */
export type RulerInks = {
  readonly gauge: string;
  readonly chosen: string;
  readonly rule: string;
  readonly wedge: string;
  readonly band: string;
  readonly bandGround: string;
};

/**
 * Read anew each time: the theme can change while the page is open. `probe` is any element of the page to try colours
 * on.
 */
export function rulerInksOf(probe: HTMLElement): RulerInks {
  const colour = (name: string) => {
    // A custom property returns the text written in it, not the computed colour.
    probe.style.color = `var(--${name})`;
    return getComputedStyle(probe).color;
  };
  const inks = {
    gauge: colour('quiet-ink'),
    chosen: colour('ink'),
    rule: colour('edge'),
    wedge: colour('warning'),
    band: colour('accent'),
    bandGround: colour('accent-ground'),
  };
  probe.style.color = '';
  return inks;
}

export const opposite = (ground: Ground): Ground => (ground === 'light' ? 'dark' : 'light');
