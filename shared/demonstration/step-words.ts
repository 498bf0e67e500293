import { pairLetters } from '@/shared/editing/pair-words';
import type { DemonstrationStep } from '@/shared/schemas/demonstration';
import type { Pack } from '@/shared/schemas/pack';
import { counted, numberText } from '@/shared/text/number';

/** What a step did, in words: `“V” and “a” 12 closer`, `3 gaps from “V” to “e” 5 wider each`, `tracking 10 closer`. */
export function stepWords(pack: Pack, { tracking, moves, run }: DemonstrationStep): string {
  const said: string[] = [];
  if (tracking !== 0) said.push(`tracking ${how(tracking)}`);
  const amounts = [...new Set(moves.map(([, by]) => by))];
  if (moves.length > 0 && moves.length <= 2)
    said.push(...moves.map(([pair, by]) => `${pairName(pack, pair)} ${how(by)}`));
  else if (moves.length > 0)
    said.push(
      `${counted(moves.length, 'gap')} ${span(pack, moves[0]![0], moves[moves.length - 1]![0])}${amounts.length === 1 ? ` ${how(amounts[0]!)} each` : ''}`,
    );
  if (said.length === 0)
    return run
      ? `${run[0] === run[1] ? pairName(pack, run[0]) : span(pack, run[0], run[1])}, left as it is`
      : 'the line, left as it is';
  return said.join(', ');
}

const how = (by: number): string => `${numberText(Math.abs(by))} ${by < 0 ? 'closer' : 'wider'}`;

function pairName(pack: Pack, pair: number): string {
  const { left, right, wordSpace } = pairLetters(pack, pair);
  return `${wordSpace ? 'the word space between ' : ''}“${left}” and “${right}”`;
}

const span = (pack: Pack, from: number, to: number): string =>
  `from “${pairLetters(pack, from).left}” to “${pairLetters(pack, to).right}”`;
