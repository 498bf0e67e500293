/**
 * The faces of the agreement protocol: which are fitted on, which choices are made on, and which are only ever looked
 * at.
 */
export const TRAIN = [
  'lato-400',
  'libre-baskerville-400',
  'roboto-slab-400',
  'source-serif-4-400',
  'montserrat-400',
  'libre-franklin-400',
  'crimson-pro-400',
  'source-sans-3-700',
  'oswald-400',
  'work-sans-400',
] as const;
export const DEVELOPMENT = ['lato-700', 'libre-baskerville-700', 'alegreya-400', 'inter-400', 'vollkorn-400'] as const;
export const HELD_OUT = [
  'fira-sans-400',
  'bitter-400',
  'eb-garamond-700',
  'playfair-display-400',
  'abril-fatface-400',
  'montserrat-700',
  'source-serif-4-700',
  'overpass-400',
] as const;
/** Held-out faces of which no other weight is in `TRAIN`. */
export const HELD_OUT_ALONE: readonly string[] = HELD_OUT.filter(
  (name) => name !== 'montserrat-700' && name !== 'source-serif-4-700',
);
