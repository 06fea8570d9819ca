import { computed, signal } from '@preact/signals';
import { DEFAULT_SETTINGS } from '../../main/contract/default-settings.ts';
import type { Description } from '../../main/contract/description.ts';
import type { FleetVehicle } from '../../main/contract/fleet.ts';
import type { Settings } from '../../main/contract/settings.ts';

/** What the host told first; what is kept for the user stands beside it, as it is now. */
export const description = signal<Description | undefined>(undefined);
export const settings = signal<Settings>(DEFAULT_SETTINGS);
export const vehicles = signal<readonly FleetVehicle[]>([]);
export const vehicleId = signal<string | undefined>(undefined);

/** The vehicle that every view is about; undefined while the fleet is empty. */
export const vehicle = computed(
  () => vehicles.value.find(({ id }) => id === vehicleId.value) ?? vehicles.value[0],
);
