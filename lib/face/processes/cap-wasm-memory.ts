/**
 * Keeps every WebAssembly module of this process under a size: growing past it fails, as it would on a full machine,
 * and the decoders answer with an error of their own. Must run before they are loaded.
 */
export function capWasmMemory(megabytes: number): { most(): number } {
  const limit = megabytes * 1024 * 1024;
  const grow = WebAssembly.Memory.prototype.grow;
  let most = 0;
  WebAssembly.Memory.prototype.grow = function capped(this: WebAssembly.Memory, pages: number): number {
    const bytes = this.buffer.byteLength + pages * 65_536;
    if (bytes > limit) throw new RangeError(`The memory limit of ${megabytes} MB is reached.`);
    most = Math.max(most, bytes / limit);
    return grow.call(this, pages);
  };
  return { most: () => most };
}
