import { Checkbox, Field } from '@/app/_ui/Field';
import { Select } from '@/app/_ui/Select';
import type { FaceChoice } from '@/lib/exercise/faces';
import { wordLanguages } from '@/lib/word-finder/languages';
import { sizesText } from '@/shared/exercise/sizes';
import { pairKinds, type PairKind } from '@/shared/schemas/word-search';
import type { ReadSearch } from './read-search';

const kindWords: Record<PairKind, string> = {
  'round-round': 'Round beside round (oo, OC)',
  'straight-round': 'Straight beside round (HO, no)',
  'straight-straight': 'Straight beside straight (HI)',
  diagonals: 'Slants that follow each other (AV, WA)',
  'open-side': 'An open side (LT, ra)',
  serifs: 'Serif facing serif',
  'accent-under-arm': 'An accent under an arm (Tö, Fê)',
  'one-among-figures': '1 among figures (1911)',
};

/** What to look for, as a form that asks by its address: it works without JavaScript, and a search can be kept. */
export function SearchForm({ search, faces }: { search: ReadSearch; faces: FaceChoice[] }) {
  return (
    <form method="get" action="#found" className="form" aria-label="Find words">
      <Field
        name="examples"
        label="Pairs"
        optional
        hint="Two letters each, such as AV, To, rn."
        defaultValue={search.examples.join(', ')}
        spellCheck={false}
        autoCapitalize="off"
      />
      <Checkbox name="alike" label="Also pairs with the same two sides" defaultChecked={search.alike} />
      <fieldset className="field" id="field-kinds">
        <legend>Kinds of pairs</legend>
        {pairKinds.map((kind) => (
          <Checkbox
            key={kind}
            name="kinds"
            value={kind}
            label={kindWords[kind]}
            defaultChecked={search.kinds.includes(kind)}
          />
        ))}
      </fieldset>
      <Select
        name="face"
        label="Face"
        choices={faces.map(({ choice, family, style }) => ({
          value: choice,
          label: `${family} ${style}`,
          group: family,
        }))}
        defaultValue={search.face}
      />
      <Field name="size" label="Size" short defaultValue={sizesText([search.size])} />
      <Select
        name="language"
        label="Language"
        choices={wordLanguages.map(({ code, name }) => ({ value: code, label: name }))}
        defaultValue={search.language}
      />
      <Select
        name="lettering"
        label="Letters"
        choices={letteringChoices}
        defaultValue={search.lettering ?? 'fitting'}
      />
      <Field name="shortest" label="Shortest word" short inputMode="numeric" defaultValue={search.shortest} />
      <Field name="longest" label="Longest word" short inputMode="numeric" defaultValue={search.longest} />
      <Select name="names" label="Names" choices={nameChoices} defaultValue={search.names} />
      <Select name="words" label="Words in a line" choices={wordChoices} defaultValue={String(search.words)} />
      <Select name="order" label="First" choices={orderChoices} defaultValue={search.order} />
      <div className="actions">
        <button type="submit" className="button button-main">
          Find words
        </button>
      </div>
    </form>
  );
}

const letteringChoices = [
  { value: 'fitting', label: 'as the pairs need them' },
  { value: 'written', label: 'as the word is written' },
  { value: 'capital', label: 'first letter a capital' },
  { value: 'capitals', label: 'all capitals' },
];
const nameChoices = [
  { value: 'with', label: 'with names' },
  { value: 'without', label: 'without names' },
  { value: 'only', label: 'names only' },
];
const wordChoices = [
  { value: '1', label: 'one' },
  { value: '2', label: 'two' },
];
const orderChoices = [
  { value: 'pairs', label: 'the most of these pairs' },
  { value: 'uneven', label: 'the most uneven in this face' },
  { value: 'common', label: 'the commonest words' },
];
