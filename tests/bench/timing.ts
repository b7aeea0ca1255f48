// Arithmetic of measuring: runs, quantiles, and how a time grows with a size. Knows nothing of what is measured.

/** Times in milliseconds, sorted. */
export type Times = readonly number[];

/** Runs `work` until `runs` times are kept, after `warmUp` runs that are not; the work may be asynchronous. */
export async function timed(work: () => unknown, runs: number, warmUp = 0): Promise<Times> {
  const times: number[] = [];
  for (let run = -warmUp; run < runs; run++) {
    const start = performance.now();
    await work();
    if (run >= 0) times.push(performance.now() - start);
  }
  return times.sort((a, b) => a - b);
}

/** The time that `share` of the runs (0 to 1) did not exceed; nearest rank. */
export function quantile(times: Times, share: number): number {
  return times[Math.max(0, Math.ceil(share * times.length) - 1)] ?? Number.NaN;
}

/** The exponent e in time ~ size^e that lies best through the points (least squares on logarithms). */
export function growthExponent(points: readonly { readonly size: number; readonly time: number }[]): number {
  const logs = points.map(({ size, time }) => [Math.log(size), Math.log(time)] as const);
  const mean = (at: 0 | 1) => logs.reduce((sum, point) => sum + point[at], 0) / logs.length;
  const [meanSize, meanTime] = [mean(0), mean(1)];
  const covariance = logs.reduce((sum, [size, time]) => sum + (size - meanSize) * (time - meanTime), 0);
  const variance = logs.reduce((sum, [size]) => sum + (size - meanSize) ** 2, 0);
  return covariance / variance;
}
