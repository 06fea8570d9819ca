import { writeBlock } from '../../../../../geo/shelf/encode-block.ts';
import { ByteStore } from '../../../../../geo/shelf/import/byte-store.ts';
import { RoadCells } from '../../../../../geo/shelf/import/grid.ts';
import { TileContent } from '../../../../../geo/shelf/import/tile-content.ts';
import { groupRecords } from '../../../../../geo/shelf/import/tile-record.ts';
import { BlockOut, type BlockPlaces } from '../block-out.ts';
import { RelationFiles } from '../relation-files.ts';
import { SpillReader } from '../spill.ts';
import type { SpillIndex } from '../spill-index.ts';

export interface BuildTilesSetup {
  readonly tiles: readonly SpillIndex[];
  readonly relations: readonly string[];
  readonly roads: SharedArrayBuffer;
  readonly outFile: string;
  readonly outEnd: BigInt64Array;
}

/** Makes the blocks of one bucket of tiles at a time. */
export class TileBuilder {
  private readonly reader: SpillReader;
  private readonly relations: RelationFiles;
  private readonly content: TileContent;
  private readonly out: BlockOut;
  private readonly store = new ByteStore();

  constructor(setup: BuildTilesSetup) {
    this.reader = new SpillReader(setup.tiles);
    this.relations = new RelationFiles(setup.relations);
    this.out = new BlockOut(setup.outFile, setup.outEnd);
    this.content = new TileContent({
      relationAt: (at) => this.relations.at(at),
      roads: new RoadCells(setup.roads),
    });
  }

  run(bucket: number): void {
    const length = this.reader.read(bucket, this.store);
    for (const group of groupRecords(this.store, length)) {
      const content = this.content.of(group, this.store);
      if (content) this.out.add(group.layer, group.tile, (out) => writeBlock(content, out));
    }
    this.out.flush();
  }

  end(): { readonly blocks: BlockPlaces } {
    this.reader.close();
    this.relations.close();
    return { blocks: this.out.close() };
  }
}
