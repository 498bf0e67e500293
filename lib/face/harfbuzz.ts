import type * as HarfBuzz from 'harfbuzzjs';

export type { HarfBuzz };

let loading: Promise<typeof HarfBuzz> | undefined;

/** HarfBuzz, loaded once per process. Imported when first needed, so that a page without faces does not load it. */
export function loadHarfBuzz(): Promise<typeof HarfBuzz> {
  loading ??= import('harfbuzzjs');
  return loading;
}
