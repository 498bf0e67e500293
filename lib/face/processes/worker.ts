// The process that opens face files. It is started by pool.ts, knows no secrets of the server, and is ended when a job
// takes too long.
import { capWasmMemory } from './cap-wasm-memory';
import { listFaces } from '../catalogue';
import { LIMITS } from '../limits';
import { FaceError } from '../face-error';
import { doJob, type Job, type JobReply } from './jobs';
import { faceOf } from './open-faces';

const memory = capWasmMemory(LIMITS.wasmMegabytes);

process.on('message', (message: { id: number; job: Job }) => {
  void work(message.job).then(
    (value) => reply({ id: message.id, retire: memory.most() > 0.5, value }),
    (error: unknown) => reply({ id: message.id, retire: memory.most() > 0.5, ...asReply(error) }),
  );
});
process.on('disconnect', () => process.exit(0));
void getReady().then(() => process.send?.({ ready: true }));

/** A few faces are taken in before the first job, so that a cold face does not wait for decoders and compilers. */
async function getReady(): Promise<void> {
  for (const { path } of listFaces().slice(0, 4))
    doJob(await faceOf({ path }), { task: 'pack', source: { path }, text: 'Hamburgefonts' });
}

async function work(job: Job): Promise<unknown> {
  return doJob(await faceOf(job.source), job);
}

function reply(message: JobReply): void {
  process.send?.(message);
}

/** Whatever a decoder throws on bad bytes is the file's fault, not the server's. */
function asReply(error: unknown): { code: string; message: string } {
  if (error instanceof FaceError) return { code: error.code, message: error.message };
  const what = error instanceof Error ? error.message : String(error);
  return {
    code: 'damaged',
    message: `The face file can't be read (${what.slice(0, 200)}). Get the file again from its source.`,
  };
}
