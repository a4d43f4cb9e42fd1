/**
 * Labels that would lie on each other moved apart: each as near its own place as the others and the ends let it, their order kept.
 * Where there is not room for all of them, they overlap evenly and stay within the ends.
 *
 * The nearest places, by least squares, are those of runs that touch, each about the mean of what its labels want; ends only
 * shift what would pass them (pool adjacent violators; Barlow et al. 1972, memory).
 *
 * @param wanted centres, in any order; of two that want the same place the first stands first
 * @param sizes along the axis, of each label or of all
 * @returns centres, in the order of `wanted`
 * @example apart([10, 12, 40], 14) // [4, 18, 40]
 */
export function apart(
  wanted: readonly number[],
  sizes: number | readonly number[],
  from = -Infinity,
  to = Infinity,
): number[] {
  const sizeOf = (i: number) => (typeof sizes === "number" ? sizes : sizes[i]!);
  const order = wanted.map((_, i) => i).sort((a, b) => wanted[a]! - wanted[b]! || a - b);
  const needed = order.reduce((sum, i) => sum + sizeOf(i), 0);
  const tight = needed > 0 ? Math.min(1, Math.max(0, to - from) / needed) : 1;
  // Sizes taken off, each label has only to stand no higher than the next.
  let before = 0;
  const shifts = order.map((i) => {
    const shift = before + (sizeOf(i) * tight) / 2;
    before += sizeOf(i) * tight;
    return shift;
  });
  const runs: { sum: number; count: number }[] = [];
  order.forEach((i, n) => {
    let run = { sum: wanted[i]! - shifts[n]!, count: 1 };
    for (let last = runs.at(-1); last !== undefined; last = runs.at(-1)) {
      if (last.sum / last.count <= run.sum / run.count) break;
      runs.pop();
      run = { sum: last.sum + run.sum, count: last.count + run.count };
    }
    runs.push(run);
  });
  const found = [...wanted];
  let n = 0;
  for (const { sum, count } of runs) {
    const start = Math.max(from, Math.min(sum / count, to - before));
    for (let one = 0; one < count; one++, n++) found[order[n]!] = start + shifts[n]!;
  }
  return found;
}
