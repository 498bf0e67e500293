/** A process that has worked for so long on one thing lets others in, ms: ten such turns are the most anybody waits. */
const AT_MOST = 10;
let since = 0;

/**
 * Lets what has come in meanwhile be answered, where this process has worked without a pause for a while. SQLite answers
 * at once, so that a request which asks it a hundred times, with work between, would otherwise never pause.
 */
export async function letOthersIn(): Promise<void> {
  if (performance.now() - since < AT_MOST) return;
  await new Promise<void>((resolve) => {
    setImmediate(() => {
      since = performance.now();
      resolve();
    });
  });
}
