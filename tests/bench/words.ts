import { buildPack } from '@/lib/face/build-pack';
import { facePairsOf } from '@/lib/word-finder/face-pairs';
import { makeList, MOST_WORDS } from '@/lib/word-finder/make-list';
import { languageCodes } from '@/shared/schemas/word-search';
import { type Search, searchWords } from '@/lib/word-finder/search';

const LIMIT = 300;
const common = { alike: false, shortest: 3, longest: 12, names: 'with', words: 1, order: 'pairs', most: 24 } as const;
const searches: [string, Search][] = [
  ['AV in capitals', { ...common, examples: ['AV'], kinds: [], lettering: null }],
  ['To, Av, rn', { ...common, examples: ['To', 'Av', 'rn'], kinds: [], lettering: null }],
  ['round beside round', { ...common, examples: [], kinds: ['round-round'], lettering: 'written' }],
  ['two words, serifs', { ...common, words: 2, examples: [], kinds: ['serifs'], lettering: 'capital' }],
];

/** npm run bench -- words: what it costs to make the lists, to meet a face, and to search. */
export default async function words(): Promise<void> {
  for (const code of languageCodes) {
    const { value, spent } = await timed(() => makeList(code));
    console.log(
      `list of ${code}: ${value.words.length} words, ${value.ranked} by frequency, ${spent.toFixed(0)} ms, once a server`,
    );
  }
  const list = await makeList('en');
  if (list.words.length !== MOST_WORDS) throw new Error(`The list has ${list.words.length} words, not ${MOST_WORDS}.`);
  for (const key of ['lato-400', 'libre-baskerville-400', 'source-sans-3-700']) {
    // Opened, as it is for the list of its other lines; its pairs are met for the first time.
    await buildPack({ kind: 'catalogue', key }, 'Hamlet');
    const face = await facePairsOf({ kind: 'catalogue', key });
    for (const [name, search] of searches) {
      const first = await timed(() => searchWords(list, face, search));
      const again = await leastOf(() => searchWords(list, face, search));
      const { looked, matching, lines } = again.value;
      console.log(
        `${key}, ${name}: first ${told(first)}, again ${told(again)}, ${LIMIT} to reach: ${again.wall < LIMIT ? 'reached' : 'MISSED'}; ${matching} of ${looked} match, first ${lines
          .slice(0, 3)
          .map(({ text }) => text)
          .join(', ')}`,
      );
    }
  }
}

function told({ wall, spent }: { wall: number; spent: number }): string {
  return `${wall.toFixed(0)} ms (${spent.toFixed(0)} of this process)`;
}

/** Of seven, since others work on this machine too. */
async function leastOf<Value>(work: () => Promise<Value>) {
  const all = [];
  for (let turn = 0; turn < 7; turn += 1) all.push(await timed(work));
  return all.sort((a, b) => a.wall - b.wall)[0]!;
}

/** `wall` counts what the face process does too; `spent` is this process's own time. */
async function timed<Value>(work: () => Promise<Value>): Promise<{ value: Value; wall: number; spent: number }> {
  const begun = performance.now(),
    used = process.cpuUsage();
  const value = await work();
  const { user, system } = process.cpuUsage(used);
  return { value, wall: performance.now() - begun, spent: (user + system) / 1000 };
}
