import type { Term } from './terms';
import { WordDrawing } from './word-drawing';

/** Terms with their explanation and, where one helps, a drawing. Each can be linked to by its id. */
export function TermList({ terms }: { terms: Term[] }) {
  return (
    <dl className="terms">
      {terms.map((term) => (
        <div key={term.id} id={term.id}>
          <dt>{term.word}</dt>
          <dd>{term.meaning}</dd>
          {term.drawing && (
            <dd>
              <WordDrawing {...term.drawing} />
            </dd>
          )}
        </div>
      ))}
    </dl>
  );
}
