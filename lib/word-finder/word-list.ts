import { fork } from 'node:child_process';
import { join } from 'node:path';
import { projectRoot } from '@/lib/face/project-root';
import type { LanguageCode } from '@/shared/schemas/word-search';
import { languageOf } from './languages';

/** Words of a language; the first `ranked` of them in the order of how common they are. */
export type WordList = { words: readonly string[]; ranked: number };

/** One list a language and server process, also when a development server loads this module again. */
const shared = globalThis as typeof globalThis & {
  kerncritWordLists?: Map<LanguageCode, Promise<WordList>>;
  kerncritLastWordList?: Promise<void>;
};
const lists = (shared.kerncritWordLists ??= new Map<LanguageCode, Promise<WordList>>());

const ended = () => {};

/** Time that a list may take, ms: six seconds of one core, on a busy machine. */
const AT_MOST = 60_000;

/**
 * The words of a language, made the first time in a process of its own (two to six seconds), about 5 MB afterwards.
 * Rejects where they could not be made; the next call tries again.
 */
export function wordListOf(code: LanguageCode): Promise<WordList> {
  const known = lists.get(code);
  if (known) return known;
  // One after another: each takes a core and much memory for seconds.
  const made = (shared.kerncritLastWordList ?? Promise.resolve()).then(() => makeInProcess(code));
  shared.kerncritLastWordList = made.then(ended, ended);
  lists.set(code, made);
  made.catch(() => lists.delete(code));
  return made;
}

function makeInProcess(code: LanguageCode): Promise<WordList> {
  const root = projectRoot();
  return new Promise((resolve, reject) => {
    const child = fork(/* turbopackIgnore: true */ join(root, 'lib/word-finder/list-process.ts'), [code], {
      cwd: root,
      env: { NODE_ENV: 'production' },
      execArgv: ['--import', 'tsx', '--max-old-space-size=768'],
      stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
    });
    const timer = setTimeout(() => child.kill('SIGKILL'), AT_MOST);
    child.on('message', ({ words, ranked }: { words: string; ranked: number }) =>
      resolve({ words: words.split('\n'), ranked }),
    );
    child.on('error', reject);
    child.on('exit', () => {
      clearTimeout(timer);
      reject(new Error(`The words of ${languageOf(code).name} could not be read. Install the packages again.`));
    });
  });
}
