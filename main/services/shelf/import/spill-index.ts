import { largest } from '../../../../geo/lists.ts';

/** Where the records of each bucket lie in one file. Its arrays are shared: each thread would copy megabytes else. */
export interface SpillIndex {
  readonly path: string;
  /** extents of bucket b are those from first[b] to first[b + 1] - 1 */
  readonly first: Uint32Array;
  /** bytes from the start of the file */
  readonly offset: Float64Array;
  readonly length: Uint32Array;
}

/** Notes what is written into a file, one extent behind the other. */
export class ExtentLog {
  private bucket = new Uint16Array(256);
  private length = new Uint32Array(256);
  private count = 0;

  /** @param length bytes of a bucket that were written behind all before */
  note(bucket: number, length: number): void {
    if (this.count === this.bucket.length) {
      const [bucketBefore, lengthBefore] = [this.bucket, this.length];
      this.bucket = new Uint16Array(this.count * 2);
      this.length = new Uint32Array(this.count * 2);
      this.bucket.set(bucketBefore);
      this.length.set(lengthBefore);
    }
    this.bucket[this.count] = bucket;
    this.length[this.count++] = length;
  }

  /** The extents by bucket, those of one in the order in which they were written. */
  index(path: string, buckets: number): SpillIndex {
    const { count } = this;
    const first = new Uint32Array(new SharedArrayBuffer((buckets + 1) * 4));
    for (let i = 0; i < count; i++) first[this.bucket[i]! + 1]!++;
    for (let bucket = 0; bucket < buckets; bucket++) first[bucket + 1]! += first[bucket]!;
    const next = first.slice();
    const offset = new Float64Array(new SharedArrayBuffer(count * 8));
    const length = new Uint32Array(new SharedArrayBuffer(count * 4));
    for (let i = 0, at = 0; i < count; at += this.length[i++]!) {
      const place = next[this.bucket[i]!]!++;
      offset[place] = at;
      length[place] = this.length[i]!;
    }
    return { path, first, offset, length };
  }
}

/** Bytes of one bucket in one file. */
export function bytesIn({ first, length }: SpillIndex, bucket: number): number {
  let sum = 0;
  for (let i = first[bucket] ?? 0; i < (first[bucket + 1] ?? 0); i++) sum += length[i]!;
  return sum;
}

/** The buckets that hold anything, in order. */
export function filledBuckets(indexes: readonly SpillIndex[]): number[] {
  const buckets = largest(indexes.map(({ first }) => first.length)) - 1;
  const filled: number[] = [];
  for (let bucket = 0; bucket < buckets; bucket++)
    if (indexes.some(({ first }) => (first[bucket + 1] ?? 0) > (first[bucket] ?? 0))) filled.push(bucket);
  return filled;
}
