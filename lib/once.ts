/** Work that is done the first time it is asked for, and never again. */
export function once(work: () => void): () => void {
  let done = false;
  return () => {
    if (done) return;
    done = true;
    work();
  };
}
