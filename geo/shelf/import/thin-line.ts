/** Lines thinned one after the other, without anything made anew for each. */
export class LineThinner {
  /** of the line last thinned, whether each position stays: 1 or 0 */
  keep = new Uint8Array(4096);
  private open = new Int32Array(256);

  /**
   * Leaves out what lies within the tolerance of what stays, by the rule of Douglas and Peucker (1973); the ends stay.
   * @param x, y positions in any flat frame, the first `count` of each
   */
  thin(x: Float64Array, y: Float64Array, count: number, tolerance: number): void {
    if (this.keep.length < count) {
      this.keep = new Uint8Array(count * 2);
      this.open = new Int32Array(count * 4);
    }
    const { keep, open } = this;
    keep.fill(0, 0, count);
    keep[0] = 1;
    keep[count - 1] = 1;
    const least = tolerance * tolerance;
    let left = 0;
    open[left++] = 0;
    open[left++] = count - 1;
    while (left > 0) {
      const to = open[--left]!;
      const from = open[--left]!;
      const at = farthest(x, y, from, to, least);
      if (at < 0) continue;
      keep[at] = 1;
      if (at - from > 1) {
        open[left++] = from;
        open[left++] = at;
      }
      if (to - at > 1) {
        open[left++] = at;
        open[left++] = to;
      }
    }
  }
}

/** The position between two others that lies farthest from their segment, -1 where none is beyond `least` squared. */
function farthest(x: Float64Array, y: Float64Array, from: number, to: number, least: number): number {
  const ax = x[from]!;
  const ay = y[from]!;
  const dx = x[to]! - ax;
  const dy = y[to]! - ay;
  const squared = dx * dx + dy * dy;
  let most = least;
  let at = -1;
  for (let i = from + 1; i < to; i++) {
    const px = x[i]! - ax;
    const py = y[i]! - ay;
    let t = squared > 0 ? (px * dx + py * dy) / squared : 0;
    if (t < 0) t = 0;
    else if (t > 1) t = 1;
    const ex = px - t * dx;
    const ey = py - t * dy;
    const away = ex * ex + ey * ey;
    if (away > most) {
      most = away;
      at = i;
    }
  }
  return at;
}
