import { AreaSpreader } from './areas.ts';
import { TileBuilder } from './build-tiles.ts';
import { GeneralNodes, GeneralWays } from './general-source.ts';
import { LineSpreader } from './join-lines.ts';
import { GeneralReader } from './read-general.ts';
import { WayRebuilder } from './rebuild.ts';
import { NameSorter } from './sort-names.ts';
import { SortedNodes, SortedRelations, SortedWays } from './sorted-source.ts';

/** The stages of an import by name; each worker has one of its own while a stage lasts. */
export const STAGES = {
  readGeneral: GeneralReader,
  sortedRelations: SortedRelations,
  sortedWays: SortedWays,
  sortedNodes: SortedNodes,
  generalWays: GeneralWays,
  generalNodes: GeneralNodes,
  rebuild: WayRebuilder,
  areas: AreaSpreader,
  lines: LineSpreader,
  tiles: TileBuilder,
  names: NameSorter,
} as const;

export type StageName = keyof typeof STAGES;
type StageOf<K extends StageName> = InstanceType<(typeof STAGES)[K]>;

export type SetupOf<K extends StageName> = ConstructorParameters<(typeof STAGES)[K]>[0];
export type TaskOf<K extends StageName> = Parameters<StageOf<K>['run']>[0];
export type DoneOf<K extends StageName> = Awaited<ReturnType<StageOf<K>['run']>>;
export type EndOf<K extends StageName> = ReturnType<StageOf<K>['end']>;
