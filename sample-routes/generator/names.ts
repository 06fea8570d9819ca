import type { Random } from './random.ts';

const STEMS = [
  'Tanner',
  'Cooper',
  'Marl',
  'Saddler',
  'Teasel',
  'Larkspur',
  'Sorrel',
  'Bramble',
  'Fletcher',
  'Weaver',
  'Chandler',
  'Thimble',
  'Osier',
  'Withy',
  'Sedge',
  'Heron',
  'Dabchick',
  'Curlew',
  'Plover',
  'Redshank',
  'Tithe',
  'Glebe',
  'Maltings',
  'Kiln',
  'Lime',
  'Foundry',
  'Gasworks',
  'Signal',
  'Turntable',
  'Goods Yard',
  'Cattle Market',
  'Butter',
  'Wool',
  'Corn',
  'Barley',
  'Rye',
  'Oat',
  'Orchard',
  'Medlar',
  'Quince',
  'Damson',
  'Pippin',
  'Russet',
  'Hawthorn',
  'Spindle',
  'Rowan',
  'Alder',
  'Aspen',
  'Hornbeam',
  'Field Maple',
  'Primrose',
  'Campion',
  'Harebell',
  'Yarrow',
  'Tansy',
  'Clover',
  'Vetch',
  'Foxglove',
  'Bracken',
  'Gorse',
  'Lapwing',
  'Wheatear',
  'Siskin',
  'Dunnock',
  'Linnet',
  'Wagtail',
  'Dipper',
  'Kestrel',
  'Merlin',
  'Pound',
  'Pinfold',
  'Sheepwash',
  'Packhorse',
  'Drover',
  'Farrier',
  'Wheelwright',
  'Thatcher',
  'Hurdle',
  'Coppice',
  'Ropewalk',
  'Sailmaker',
  'Net Loft',
  'Capstan',
  'Mizzen',
  'Anchor',
  'Beacon',
  'Lantern',
  'Tiller',
  'Bowline',
  'Herring',
  'Cockle',
  'Sandpiper',
  'Turnstone',
  'Thrift',
  'Marram',
  'Samphire',
  'Glasswort',
  'Weir',
  'Sluice',
  'Leat',
  'Millrace',
  'Fulling',
  'Dyehouse',
  'Bleach',
  'Spinner',
  'Shuttle',
  'Bobbin',
];
const TOWN = ['Street', 'Row', 'Road', 'Terrace'];
const ESTATE = ['Close', 'Way', 'Drive', 'Gardens', 'Crescent', 'Rise'];
const VILLAGE = ['Lane', 'Close', 'Garth', 'End', 'Hill'];

export type NameKind = 'town' | 'estate' | 'village';

/** Hands out street names, each once. */
export class Names {
  private readonly used = new Set<string>();
  private readonly random: Random;

  constructor(random: Random) {
    this.random = random;
  }

  next(kind: NameKind): string {
    const ends = kind === 'town' ? TOWN : kind === 'estate' ? ESTATE : VILLAGE;
    for (let tries = 0; tries < 5000; tries++) {
      const stem = STEMS[Math.floor(this.random() * STEMS.length)];
      const end = ends[Math.floor(this.random() * ends.length)];
      const name = `${stem} ${end}`;
      if (this.used.has(name)) continue;
      this.used.add(name);
      return name;
    }
    throw new Error('out of street names');
  }
}
