import type { FleetVehicle } from '../contract/fleet.ts';
import type { Settings } from '../contract/settings.ts';
import type { Engine } from './engine/engine.ts';
import type { PrintSheet } from './hand-over/finish-hand-over.ts';
import type { Library } from './library/library.ts';

/** What handing over is done with. */
export interface HandOverParts {
  readonly engine: Engine;
  readonly stores: {
    readonly library: Library;
    readonly settings: { current(): Settings };
    readonly fleet: { current(): readonly FleetVehicle[] };
  };
  readonly dataFolder: string;
  now(): Date;
  /** a browser found on this computer where left out */
  readonly printSheet?: PrintSheet;
}
