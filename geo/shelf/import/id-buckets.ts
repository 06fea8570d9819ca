/** How ids are sorted into buckets: by ranges, each from its first id on, or, where nobody knows them, by mixing. */
export type IdPlan =
  | { readonly kind: 'ranges'; readonly first: Float64Array }
  | { readonly kind: 'mixed'; readonly count: number };

/** How many buckets a plan has. */
export function bucketCount(plan: IdPlan): number {
  return plan.kind === 'ranges' ? plan.first.length : plan.count;
}

/** Finds the bucket of an id; that of the last id is remembered, since ids of one way lie close together. */
export class IdBuckets {
  private readonly plan: IdPlan;
  private last = 0;
  private from = Number.POSITIVE_INFINITY;
  private to = Number.NEGATIVE_INFINITY;

  constructor(plan: IdPlan) {
    this.plan = plan;
  }

  bucketOf(id: number): number {
    if (id >= this.from && id < this.to) return this.last;
    const { plan } = this;
    if (plan.kind === 'mixed') return mixed(id, plan.count);
    const { first } = plan;
    let low = 0;
    let high = first.length;
    while (high - low > 1) {
      const middle = (low + high) >>> 1;
      if (first[middle]! <= id) low = middle;
      else high = middle;
    }
    this.last = low;
    this.from = low === 0 ? Number.NEGATIVE_INFINITY : first[low]!;
    this.to = low + 1 < first.length ? first[low + 1]! : Number.POSITIVE_INFINITY;
    return low;
  }
}

/** Ids that follow each other fall into one bucket for a while. */
function mixed(id: number, count: number): number {
  const group = Math.floor(id / 64);
  const low = Math.imul((group | 0) ^ Math.floor(group / 4_294_967_296), 0x9e3779b1);
  return (low >>> 8) % count;
}
