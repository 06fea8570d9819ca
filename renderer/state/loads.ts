import { computed, signal } from '@preact/signals';
import type { LoadItem } from '../../geo/load/list/load-list.ts';
import type { LoadFigures } from '../../geo/load/weigh/figures.ts';
import { weigh } from '../../geo/load/weigh/weigh.ts';
import type { Problem, Result } from '../../geo/result.ts';
import { vehicle } from './kept.ts';

/** What is aboard each vehicle of the fleet, by its id; nothing where nothing was listed. */
export const loads = signal<Readonly<Record<string, readonly LoadItem[]>>>({});

const NOTHING: readonly LoadItem[] = [];

/** What is aboard the chosen vehicle. */
export const aboard = computed(() => loads.value[vehicle.value?.id ?? ''] ?? NOTHING);

/** The chosen vehicle with what is listed; undefined while nothing is. A problem where it cannot be worked out. */
const aboardWeighed = computed<Result<LoadFigures> | undefined>(() => {
  const card = vehicle.value?.card;
  return card && aboard.value.length > 0 ? weigh(card, aboard.value) : undefined;
});

/** The items that the check counts. A list that cannot be worked out would leave the whole drive unchecked. */
export const aboardForCheck = computed(() => (aboardWeighed.value?.ok ? aboard.value : undefined));

/** Why a list that stands in the load view counts for nothing in the check. */
export const notCounted = computed<Problem | undefined>(() =>
  aboardWeighed.value?.ok === false ? aboardWeighed.value.error : undefined,
);
