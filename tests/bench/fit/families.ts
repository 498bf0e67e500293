/**
 * The families whose shipped kerning the usual range is fitted on, chosen on, and held against, by their package in the
 * npm registry (scope @fontsource, version pinned below). Whole families and their near relations stay together.
 */
export const VERSION_RANGE = '^5.0.0';

export type Role = 'fitting' | 'choosing' | 'held out';

/** Held out to the end: the protocol's own, and every family that the deal gives to this role. */
const HELD_OUT = ['fira-sans', 'bitter', 'eb-garamond', 'playfair-display', 'abril-fatface', 'overpass'];
/** On which choices are made: the protocol's own, and those that the deal gives to this role. */
const CHOOSING = ['alegreya', 'inter', 'vollkorn'];
/** The protocol's families for fitting. */
const FITTING = [
  'lato',
  'libre-baskerville',
  'roboto-slab',
  'source-serif-4',
  'montserrat',
  'libre-franklin',
  'crimson-pro',
  'source-sans-3',
  'oswald',
  'work-sans',
];

/** Families with near relations, which get one role: the same drawings in another width, digitisation or name. */
const RELATIONS: string[][] = [
  ['alegreya', 'alegreya-sans'],
  ['asap', 'asap-condensed'],
  ['atkinson-hyperlegible', 'atkinson-hyperlegible-next'],
  ['crimson-pro', 'crimson-text'],
  ['encode-sans', 'encode-sans-condensed', 'encode-sans-semi-expanded'],
  ['funnel-display', 'funnel-sans'],
  ['gentium-plus', 'gentium-book-plus'],
  ['instrument-sans', 'instrument-serif'],
  ['libre-franklin', 'public-sans'],
  ['montserrat', 'montserrat-alternates'],
  ['noto-sans', 'noto-sans-display', 'open-sans'],
  ['noto-serif', 'noto-serif-display'],
  ['poppins', 'dm-sans', 'rethink-sans'],
  ['red-hat-display', 'red-hat-text'],
  ['roboto', 'roboto-condensed', 'roboto-serif', 'roboto-slab'],
  ['saira', 'saira-condensed'],
  ['wix-madefor-display', 'wix-madefor-text'],
];

/**
 * Everything else, dealt out: of nine groups in the order of a plain sum of their letters, one is held out and one
 * chosen on.
 */
const DEALT =
  `abhaya-libre acme actor adamina afacad albert-sans aldrich alegreya-sans aleo alata alice alumni-sans amaranth
anton antonio anybody arimo arsenal asap asap-condensed atkinson-hyperlegible atkinson-hyperlegible-next average-sans
bai-jamjuree basic be-vietnam-pro bebas-neue belleza besley big-shoulders-display blinker brawler bree-serif
bricolage-grotesque caladea calistoga cantarell cardo catamaran chakra-petch comfortaa commissioner cooper-hewitt
crimson-text darker-grotesque didact-gothic dm-sans dosis encode-sans encode-sans-condensed encode-sans-semi-expanded epilogue
esteban familjen-grotesk faustina figtree fjalla-one frank-ruhl-libre fraunces fredoka funnel-display funnel-sans gabarito
geist-sans gentium-book-plus gentium-plus geologica golos-text graduate halant hanken-grotesk hepta-slab hind host-grotesk inika
inknut-antiqua instrument-sans instrument-serif italiana k2d kanit karma kumbh-sans league-gothic league-spartan lexend
libre-caslon-text literata lustria marcellus martel maven-pro metropolis mona-sans monda montserrat-alternates newsreader
noto-sans noto-sans-display noto-serif noto-serif-display old-standard-tt onest open-sans orienta outfit ovo oxanium oxygen
passion-one patua-one petrona philosopher piazzolla play plus-jakarta-sans poly poppins prompt pt-sans public-sans quattrocento
questrial quicksand rajdhani red-hat-display red-hat-text reddit-sans rethink-sans roboto roboto-condensed roboto-serif rufina
russo-one saira saira-condensed sanchez sansita sarabun schibsted-grotesk sen signika sofia-sans sora sorts-mill-goudy
space-grotesk spline-sans stix-two-text suez-one syne taviraj tenor-sans titillium-web tomorrow ubuntu unna urbanist
varela volkhov wix-madefor-display wix-madefor-text yanone-kaffeesatz yeseva-one`.split(/\s+/);

/**
 * Left out though they are open and kerned: other names of a family that is held out or reserved elsewhere
 * (firago, yrsa and rasa, archivo-black, archivo-narrow, exo-2, dm-serif-text, nunito-sans, pt-serif-caption,
 * playfair), and Latin drawings of another family under a further name (assistant, heebo, yantramanav, carlito,
 * el-messiri).
 */
export const FAMILIES: readonly { family: string; role: Role }[] = [
  ...HELD_OUT.map((family) => ({ family, role: 'held out' as const })),
  ...CHOOSING.map((family) => ({ family, role: 'choosing' as const })),
  ...FITTING.map((family) => ({ family, role: 'fitting' as const })),
  ...DEALT.map((family) => ({ family, role: dealt(family) })),
];

function dealt(family: string): Role {
  const group = groupOf(family);
  const named = group.find((one) => [...HELD_OUT, ...CHOOSING, ...FITTING].includes(one));
  if (named) return HELD_OUT.includes(named) ? 'held out' : CHOOSING.includes(named) ? 'choosing' : 'fitting';
  let sum = 0;
  for (const letter of group[0]!) sum = (sum * 31 + letter.charCodeAt(0)) % 1_000_003;
  return sum % 9 === 4 ? 'held out' : sum % 9 === 7 ? 'choosing' : 'fitting';
}

function groupOf(family: string): string[] {
  return RELATIONS.find((group) => group.includes(family)) ?? [family];
}
