import { useRef } from 'preact/hooks';
import type { LoadItem } from '../../../geo/load/list/load-list.ts';
import { carryBy, carryTo } from '../../../geo/load/places/carry.ts';
import { sayWhere } from '../../../geo/load/weigh/say-plates.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import { settings } from '../../state/kept.ts';
import { aboard } from '../../state/loads.ts';
import { focusNear, revealRow } from '../state/keep-focus.ts';
import { endStep, held, pointedAt, remove, replace } from '../state/state.ts';
import type { Layout } from './layout.ts';

/** Less than this is a click. */
const CARRY_LEAST_PX = 3;
/** A named place takes an item in from so near. */
const SNAP_PX = 7;
const STEP_M = 0.05;
const STRIDE_M = 0.5;
/** Farther out nothing can hang. */
const BEYOND_M = 1;

const WAY: Readonly<Record<string, number>> = {
  ArrowLeft: -STEP_M,
  ArrowDown: -STEP_M,
  ArrowRight: STEP_M,
  ArrowUp: STEP_M,
  PageDown: -STRIDE_M,
  PageUp: STRIDE_M,
};

/** Carries one item along the vehicle, by pointer and by keys. @param edit opens its line in the table */
export function useCarry(index: number, item: LoadItem, card: VehicleCard, at: Layout, edit: () => void) {
  const from = useRef<{ readonly px: number; readonly xM: number } | undefined>(undefined);
  const within = (xM: number) => Math.min(at.endM + BEYOND_M, Math.max(at.noseM - BEYOND_M, xM));
  const others = () => aboard.peek().filter((_, i) => i !== index);
  const put = (to: LoadItem, merging?: string) =>
    replace(index, to, `moved ${item.name} to ${sayWhere(to, settings.peek().units)}`, merging);

  return {
    onPointerDown(event: PointerEvent & { readonly currentTarget: SVGElement }) {
      if (event.button !== 0) return;
      pointedAt.value = index;
      from.current = { px: event.clientX, xM: item.xM };
      event.currentTarget.setPointerCapture(event.pointerId);
    },
    onPointerMove(event: PointerEvent) {
      const start = from.current;
      if (!start) return;
      const byPx = event.clientX - start.px;
      if (held.peek()?.index !== index && Math.abs(byPx) < CARRY_LEAST_PX) return;
      const xM = within(start.xM + byPx / at.pxPerM);
      held.value = { index, item: carryTo({ item, others: others() }, card, xM, SNAP_PX / at.pxPerM) };
    },
    onPointerUp() {
      from.current = undefined;
      const hand = held.peek();
      if (hand?.index === index) put(hand.item);
    },
    onPointerCancel() {
      from.current = undefined;
      held.value = undefined;
    },
    onKeyDown(event: KeyboardEvent) {
      if (event.ctrlKey || event.altKey || event.metaKey) return;
      if (event.key === 'Escape' && held.peek()) {
        from.current = undefined;
        held.value = undefined;
      } else if (event.key === 'Delete' || event.key === 'Backspace') {
        remove(index);
        focusNear(index, 'load-item');
      } else if (event.key === 'Enter') edit();
      else if (event.key === 'Home') put(carryTo({ item, others: others() }, card, at.noseM, 0));
      else if (event.key === 'End') put(carryTo({ item, others: others() }, card, at.endM, 0));
      else {
        const way = WAY[event.key];
        if (way === undefined) return;
        const by = event.shiftKey ? Math.sign(way) * STRIDE_M : way;
        const to = carryBy({ item, others: others() }, card, within(item.xM + by) - item.xM);
        if (to !== item) put(to, `carry ${index}`);
      }
      event.preventDefault();
      event.stopPropagation();
    },
    onFocus() {
      pointedAt.value = index;
      revealRow(index);
    },
    onBlur: endStep,
  };
}
