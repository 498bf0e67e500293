// Reads faces one after the other for corpus.ts.
import { faceRows } from './face-rows';

process.on('message', (path: string) => {
  faceRows(path).then(
    (rows) => process.send!({ path, rows }),
    (error: unknown) => process.send!({ path, rows: null, why: String(error) }),
  );
});
