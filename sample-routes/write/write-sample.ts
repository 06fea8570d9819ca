import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { makeDistrict } from '../draw/district.ts';
import { makeDrives } from '../draw/drives/make-drives.ts';
import { writeDrive } from './write-drive.ts';
import { writeOsmGz } from './write-osm-xml.ts';
import { writePbf } from './write-pbf.ts';

/** The built file lies three folders deeper than the repository. */
const FOLDER = fileURLToPath(new URL('../../../sample-routes/', import.meta.url));

const district = makeDistrict();
mkdirSync(join(FOLDER, 'drives'), { recursive: true });
writeFileSync(join(FOLDER, 'district.osm.pbf'), writePbf(district));
writeFileSync(join(FOLDER, 'district.osm.gz'), writeOsmGz(district));
for (const [name, drive] of makeDrives(district))
  writeFileSync(join(FOLDER, 'drives', name), writeDrive(drive));
console.log(
  `${district.nodes.length} nodes, ${district.ways.length} ways, ${district.relations.length} relations`,
);
