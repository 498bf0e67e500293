import { Fragment } from 'react';
import { Section } from '@/app/_ui/Section';
import { listCriteria } from '@/lib/exercise/list-criteria';
import { forPage } from '@/lib/http/page';
import { withUnit } from '@/shared/text/number';

/** What is judged, for those who will be: each criterion with its levels. Nothing where no marks are given. */
export async function CriteriaWords({ exerciseId }: { exerciseId: string }) {
  const criteria = await forPage(listCriteria, { exerciseId });
  if (criteria.length === 0) return null;
  return (
    <Section title="What is judged">
      <ul className="card-list">
        {criteria.map((criterion) => (
          <li key={criterion.id}>
            <h3>{criterion.title}</h3>
            <p className="quiet note-size">{withUnit(criterion.share, '%')} of the mark</p>
            {criterion.description && <p>{criterion.description}</p>}
            <details className="more">
              <summary>Levels of “{criterion.title}”</summary>
              <dl className="facts">
                {criterion.levels.map((level) => (
                  <Fragment key={level.title}>
                    <dt>{level.title}</dt>
                    <dd>{level.description || withUnit(level.points, '%', 1)}</dd>
                  </Fragment>
                ))}
              </dl>
            </details>
          </li>
        ))}
      </ul>
    </Section>
  );
}
