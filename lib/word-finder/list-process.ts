import { languageCodes } from '@/shared/schemas/word-search';
import { makeList } from './make-list';

// Makes the list of one language, sends it and ends: it takes seconds and much memory, and no server should wait.
const code = languageCodes.find((one) => one === process.argv[2]);
if (!code) throw new Error(`No word list for “${process.argv[2]}”. There are: ${languageCodes.join(', ')}.`);
const { words, ranked } = await makeList(code);
process.send?.({ words: words.join('\n'), ranked }, () => process.disconnect());
