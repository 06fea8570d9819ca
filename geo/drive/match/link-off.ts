import { leastOf, link, MOVE } from './chain-costs.ts';
import { type ChainStep, type ChainWork, END_OFF } from './chain-step.ts';

/** Links the states off the map, and the cheapest state on a road with them: leaving the roads, staying off, coming back. */
export function linkOff({ settings, costs }: ChainWork, step: ChainStep): void {
  const { begin, mid, end, straightM, betaM, breakM } = step;
  const { detourM, detourPerM, sparseM } = settings;
  const far = (detourPerM * Math.max(0, straightM - sparseM)) / betaM;
  const half = detourM / 2 / betaM + far;
  const [lead, between, tail] = [mid - 3, mid - 2, mid - 1];
  const [nextLead, nextBetween, nextTail] = [end - 3, end - 2, end - 1];
  const road = leastOf(costs, begin, lead);
  link(costs, lead, nextLead, far, MOVE.off);
  link(costs, between, nextBetween, far, MOVE.off);
  link(costs, tail, nextTail, far, MOVE.off);
  if (road >= 0) {
    link(costs, road, nextBetween, half, MOVE.off);
    link(costs, road, nextTail, END_OFF + far, MOVE.off);
  }
  for (let to = mid; to < nextLead; to++) {
    link(costs, lead, to, far, MOVE.off);
    link(costs, between, to, half, MOVE.off);
    if (road >= 0) link(costs, road, to, breakM / betaM, MOVE.off);
  }
}
