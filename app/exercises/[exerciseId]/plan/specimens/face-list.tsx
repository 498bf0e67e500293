import { Checkbox } from '@/app/_ui/Checkbox';
import type { FaceChoice } from '@/lib/exercise/face-choices';

/** Faces to tick, family by family, weights rising, each family under its kind of design. */
export function FaceList({ faces }: { faces: FaceChoice[] }) {
  const families = [...new Set(faces.map(({ family }) => family))];
  return (
    <fieldset className="field" id="field-faces">
      <legend>Faces</legend>
      <p className="hint">
        A variable face with an optical size is set at the size you give, as a browser does it. Licences stand on{' '}
        <a href="/faces">Faces and licences</a>.
      </p>
      <div className="face-list" role="group">
        {families.map((family) => {
          const own = faces.filter((face) => face.family === family);
          return (
            <details key={family} className="face-family">
              <summary>
                {family}{' '}
                <span className="quiet note-size">
                  {own[0]!.design}, {own.length === 1 ? 'one style' : `${own.length} styles`}
                </span>
              </summary>
              <div className="choices-row">
                {own.map((face) => (
                  <Checkbox key={face.choice} name="faces" value={face.choice} label={`${face.style}`} />
                ))}
              </div>
            </details>
          );
        })}
      </div>
    </fieldset>
  );
}
