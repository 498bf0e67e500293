// Fits one net on some faces for run.ts.
import { corpus } from './corpus';
import { fitNet, type FitOptions } from './fit-net';

process.on('message', (message: { paths: string[]; options: FitOptions }) => {
  void work(message);
});

async function work({ paths, options }: { paths: string[]; options: FitOptions }): Promise<void> {
  const faces = (await corpus()).filter(({ path }) => paths.includes(path));
  const net = await fitNet(faces, options, (text) => process.stderr.write(`seed ${options.seed}: ${text}\n`));
  process.send!(net);
}
