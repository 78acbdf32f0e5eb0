/** A point of a printed curve. */
export type CurvePoint = readonly [x: number, y: number];

/**
 * Value of a curve given as points of ascending x, straight between them and level beyond its ends.
 * Assumes at least one point; a single one is a constant.
 */
export function onCurve(points: readonly CurvePoint[], x: number): number {
  const first = points[0];
  const last = points.at(-1);
  if (first === undefined || last === undefined) throw new RangeError('a curve needs at least one point');
  if (x <= first[0]) return first[1];
  if (x >= last[0]) return last[1];
  const above = points.findIndex(([at]) => at >= x);
  const [x1, y1] = points[above] ?? last;
  const [x0, y0] = points[above - 1] ?? first;
  return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
}

/** As `onCurve`, straight on a logarithmic x scale. All x and `x` itself positive. */
export function onLogCurve(points: readonly CurvePoint[], x: number): number {
  return onCurve(points.map(([at, y]) => [Math.log(at), y] as const), Math.log(x));
}

/** As `onCurve`, straight on two logarithmic scales. All values positive. */
export function onLogLogCurve(points: readonly CurvePoint[], x: number): number {
  // A printed point is given back as printed, not through two rounded logarithms.
  const printed = points.find(([at]) => at === x);
  if (printed !== undefined) return printed[1];
  return Math.exp(onCurve(points.map(([at, y]) => [Math.log(at), Math.log(y)] as const), Math.log(x)));
}
