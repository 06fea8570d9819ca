import type { RoadCosts } from '../price/road-costs.ts';
import { turnTenths } from '../price/turn-prices.ts';
import { firstLayer, LAYER, LAYERS, NO_LAYER, nextLayer } from '../search/layers.ts';
import type { DriveStep } from './drive-steps.ts';

/** What the drive itself costs, and what its roads allow, step by step. Tenths of seconds. */
export interface DriveCosts {
  /** since the start, when a step begins and when it ends */
  readonly beginTenths: Float64Array;
  readonly endTenths: Float64Array;
  /** the time of it alone */
  readonly endTime: Float64Array;
  /** the layer a step is driven in */
  readonly layer: Int8Array;
  /** by step and layer: whether the rest of the drive may be driven from there, its own bars apart */
  readonly onward: readonly (readonly boolean[])[];
}

/** Off the mapped roads, tenths of seconds a metre: 20 km/h, as the timetable has it. */
const OFF_MAP_PER_M = 1.8;

/** Runs a drive in the costs that a search uses, so that both compare. */
export function driveCosts(steps: readonly DriveStep[], costs: RoadCosts): DriveCosts {
  const count = steps.length;
  const [beginTenths, endTenths, endTime] = [0, 0, 0].map(() => new Float64Array(count)) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  let [cost, time] = [0, 0];
  for (const [i, step] of steps.entries()) {
    const before = steps[i - 1];
    const turn = before === undefined ? { cost: 0, time: 0 } : between(before, step, costs);
    cost += turn.cost;
    time += turn.time;
    beginTenths[i] = cost;
    const share = (step.toM - step.fromM) / Math.max(costs.graph.lengthM[step.directed >> 1]!, 1e-9);
    cost += Math.ceil(costs.costTenths(step.directed) * Math.min(1, share));
    time += Math.ceil(costs.timeTenths(step.directed) * Math.min(1, share));
    endTenths[i] = cost;
    endTime[i] = time;
  }
  const layer = layersAlong(steps, costs);
  return { beginTenths, endTenths, endTime, layer, onward: onwardFrom(steps, costs, layer) };
}

function between(before: DriveStep, step: DriveStep, costs: RoadCosts): { cost: number; time: number } {
  if (!step.goesOn) {
    const apart = Math.max(0, step.fromM - before.toM) * OFF_MAP_PER_M;
    return { cost: apart, time: apart };
  }
  const turn = turnTenths(costs, before.directed, step.directed) + costs.waitTenths(before.directed);
  const [was, now] = [costs.kind(before.directed), costs.kind(step.directed)];
  const doubts = costs.point(before.directed).priceTenths + (was === now ? 0 : now.priceTenths);
  return { cost: turn + doubts, time: turn };
}

function moved(layer: number, before: DriveStep, step: DriveStep, costs: RoadCosts): number {
  if (!step.goesOn) return LAYER.between;
  const { ground, open } = costs.kind(step.directed);
  return nextLayer(layer, { ground, open, point: costs.point(before.directed).open });
}

function layersAlong(steps: readonly DriveStep[], costs: RoadCosts): Int8Array {
  const layers = new Int8Array(steps.length);
  for (const [i, step] of steps.entries()) {
    const before = steps[i - 1];
    const layer =
      before === undefined
        ? firstLayer(costs.kind(step.directed).ground)
        : moved(layers[i - 1]!, before, step, costs);
    // a bar of the drive's own: what lies behind it is judged for itself
    layers[i] = layer === NO_LAYER ? LAYER.between : layer;
  }
  return layers;
}

function onwardFrom(steps: readonly DriveStep[], costs: RoadCosts, natural: Int8Array): boolean[][] {
  const onward: boolean[][] = new Array<boolean[]>(steps.length);
  let after = new Array<boolean>(LAYERS).fill(true);
  for (let i = steps.length - 1; i >= 0; i--) {
    const [step, next] = [steps[i], steps[i + 1]];
    if (step === undefined) continue;
    const behind = after;
    if (next !== undefined) {
      const barred = moved(natural[i]!, step, next, costs) === NO_LAYER;
      after = Array.from({ length: LAYERS }, (_, layer) => {
        const to = moved(layer, step, next, costs);
        return to === NO_LAYER ? barred : behind[to] === true;
      });
    }
    onward[i] = after;
  }
  return onward;
}
