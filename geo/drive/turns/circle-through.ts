/** Steps of the refinement; it settles in three or four. */
const STEPS = 8;

export interface CircleThrough {
  readonly x: number;
  readonly y: number;
  readonly radiusM: number;
}

/**
 * The circle of least squared distances through places in the plane: Kåsa's linear fit, then Gauss–Newton on the
 * distances themselves. Undefined for fewer than three places or places on one line.
 */
export function circleThrough(xs: readonly number[], ys: readonly number[]): CircleThrough | undefined {
  const count = xs.length;
  if (count < 3) return undefined;
  const meanX = mean(xs);
  const meanY = mean(ys);
  const u = xs.map((x) => x - meanX);
  const v = ys.map((y) => y - meanY);
  const sum = (term: (u: number, v: number) => number) =>
    u.reduce((total, ui, i) => total + term(ui, v[i]!), 0);
  const uu = sum((a) => a * a);
  const vv = sum((_, b) => b * b);
  const uv = sum((a, b) => a * b);
  const det = uu * vv - uv * uv;
  if (det <= 1e-9 * (uu + vv) ** 2) return undefined;
  const p = sum((a, b) => a * (a * a + b * b)) / 2;
  const q = sum((a, b) => b * (a * a + b * b)) / 2;
  let x = (p * vv - q * uv) / det;
  let y = (q * uu - p * uv) / det;
  let radiusM = Math.sqrt(x * x + y * y + (uu + vv) / count);
  for (let step = 0; step < STEPS; step++) {
    const away = u.map((ui, i) => Math.hypot(ui - x, v[i]! - y));
    const cos = u.map((ui, i) => (ui - x) / away[i]!);
    const sin = v.map((vi, i) => (vi - y) / away[i]!);
    // residual d − r; with r eliminated by its mean, two unknowns are left
    const meanAway = mean(away);
    const [meanCos, meanSin] = [mean(cos), mean(sin)];
    let [a, b, c, d, e] = [0, 0, 0, 0, 0];
    for (let i = 0; i < count; i++) {
      const ci = cos[i]! - meanCos;
      const si = sin[i]! - meanSin;
      const ri = away[i]! - meanAway;
      a += ci * ci;
      b += ci * si;
      c += si * si;
      d += ci * ri;
      e += si * ri;
    }
    const jac = a * c - b * b;
    if (!(jac > 1e-12)) break;
    x += (d * c - e * b) / jac;
    y += (e * a - d * b) / jac;
    radiusM = mean(u.map((ui, i) => Math.hypot(ui - x, v[i]! - y)));
  }
  return Number.isFinite(radiusM) ? { x: x + meanX, y: y + meanY, radiusM } : undefined;
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
