/** For each key the least of its first signs, two or more, that tell it from all others. Keys are all different. */
export function signsOf(keys: readonly string[]): Map<string, string> {
  return new Map(
    keys.map((key) => {
      let length = 2;
      while (length < key.length && keys.some((other) => other !== key && other.startsWith(key.slice(0, length))))
        length += 1;
      return [key, key.slice(0, length)];
    }),
  );
}
