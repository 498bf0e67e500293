import { AppError } from '@/lib/access/errors';

/** A body of JSON, at most `most` bytes, as an object. @throws AppError TOO_LARGE or INVALID. */
export async function readJson(request: Request, most = 64 * 1024): Promise<Record<string, unknown>> {
  const text = await readText(request, most);
  try {
    const value: unknown = JSON.parse(text);
    if (value !== null && typeof value === 'object' && !Array.isArray(value)) return value as Record<string, unknown>;
  } catch {
    // Told below, like any other body that is not an object.
  }
  throw new AppError('INVALID', `Expected a JSON object, got “${text.slice(0, 40)}”.`);
}

async function readText(request: Request, most: number): Promise<string> {
  const reader = request.body?.getReader();
  if (!reader) return '';
  const chunks: Uint8Array[] = [];
  let size = 0;
  for (let chunk = await reader.read(); !chunk.done; chunk = await reader.read()) {
    size += chunk.value.byteLength;
    if (size > most) {
      await reader.cancel();
      throw new AppError('TOO_LARGE', `This is more than the ${most} bytes that are taken at once.`);
    }
    chunks.push(chunk.value);
  }
  return Buffer.concat(chunks).toString('utf8');
}
