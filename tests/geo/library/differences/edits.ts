import { addBridge, addNode, type District, split, wayOf } from './district.ts';

/** Tags put on a way. */
export const setTags = (id: number, tags: Record<string, string>) => (map: District) => {
  Object.assign(wayOf(map, id).tags, tags);
};
/** A tag taken off a way. */
export const dropTag = (id: number, key: string) => (map: District) => {
  delete wayOf(map, id).tags[key];
};

/** One small edit of the map each, and what is to be told of it. */
export const EDITS: readonly (readonly [string, (map: District) => void, readonly string[]])[] = [
  ['a limit added', setTags(1, { maxheight: '3.0' }), ['new: height']],
  ['a limit removed', dropTag(2, 'maxheight'), ['gone: height']],
  ['a limit raised out of reach', setTags(2, { maxheight: '4.2' }), ['gone: height']],
  ['a limit raised a little', setTags(2, { maxheight: '3.24' }), ['changed: height']],
  ['a limit lowered below the vehicle', setTags(2, { maxheight: '2.9' }), ['changed: height']],
  ['the same figure in feet and inches', setTags(2, { maxheight: `10'6"` }), []],
  ['the same figure with its unit and more decimals', setTags(3, { maxweight: '3200 kg' }), []],
  ['a figure that became a word', setTags(2, { maxheight: 'low' }), ['changed: height']],
  ['a second limit of another kind on a road that has one', setTags(2, { maxweight: '3' }), ['new: mass']],
  ['a limit by hours added', setTags(1, { 'maxweight:conditional': '3 @ (22:00-06:00)' }), ['new: mass']],
  ['other hours', setTags(6, { 'motor_vehicle:conditional': 'no @ (Sa 06:00-18:00)' }), ['changed: access']],
  [
    'the same hours written otherwise',
    setTags(6, { 'motor_vehicle:conditional': 'no @ (Sa  07:00-17:00 )' }),
    [],
  ],
  ['hours dropped', dropTag(6, 'motor_vehicle:conditional'), ['gone: access']],
  ['a barrier added', (map) => addNode(map, 2600, { barrier: 'bollard' }), ['new: barrier']],
  ['a barrier taken away', (map) => delete map.nodeTags['3500'], ['gone: barrier']],
  [
    'a gate that became bollards',
    (map) => {
      map.nodeTags['3500'] = { barrier: 'bollard' };
    },
    ['changed: barrier'],
  ],
  [
    'a barrier moved by 10 m',
    (map) => {
      map.nodes['3500'] = [3510, 0];
    },
    [],
  ],
  [
    'a barrier drawn anew 10 m on',
    (map) => {
      delete map.nodeTags['3500'];
      addNode(map, 3510, { barrier: 'gate' });
    },
    [],
  ],
  [
    'a barrier taken away and another put up 150 m on',
    (map) => {
      delete map.nodeTags['3500'];
      addNode(map, 3650, { barrier: 'gate' });
    },
    ['gone: barrier', 'new: barrier'],
  ],
  [
    'a second barrier 12 m behind the first',
    (map) => addNode(map, 3512, { barrier: 'gate' }),
    ['new: barrier'],
  ],
  ['access closed', setTags(4, { motor_vehicle: 'no' }), ['new: access']],
  ['private land closed to all', setTags(7, { motor_vehicle: 'no' }), ['changed: access']],
  ['private land opened', setTags(7, { motor_vehicle: 'yes' }), ['gone: access']],
  [
    'private by another key',
    (map) => {
      delete wayOf(map, 7).tags['motor_vehicle'];
      wayOf(map, 7).tags['access'] = 'private';
    },
    [],
  ],
  ['a bridge built over the drive', (map) => addBridge(map, 3800, 41), ['new: height']],
  [
    'a bridge pulled down',
    (map) => {
      map.ways = map.ways.filter(({ id }) => id !== 40);
    },
    ['gone: height'],
  ],
  ['a low height mapped under the bridge', setTags(5, { maxheight: '3' }), ['now mapped: height']],
  ['a high height mapped under the bridge', setTags(5, { maxheight: '4.5' }), ['now mapped: height']],
  ['the bridge drawn as a new way', (map) => Object.assign(wayOf(map, 40), { id: 400 }), []],
  ['a way split, the limit on both halves', (map) => split(map, 2, '1500', 200), []],
  [
    'a way split and one half given a lower limit',
    (map) => {
      split(map, 3, '2500', 300);
      wayOf(map, 300).tags['maxweight'] = '2.8';
    },
    ['new: mass'],
  ],
  [
    'a way split in three for a bridge without a name',
    (map) => {
      split(map, 3, '2750', 301);
      split(map, 3, '2250', 300);
      Object.assign(wayOf(map, 300).tags, { bridge: 'yes', layer: '1' });
      delete wayOf(map, 300).tags['name'];
    },
    [],
  ],
  [
    'two roads under one number and name',
    (map) => {
      wayOf(map, 4).refs.push(...wayOf(map, 5).refs.slice(1));
      map.ways = map.ways.filter(({ id }) => id !== 5);
    },
    ['road changed: road'],
  ],
  [
    'all ids other ones',
    (map) => {
      for (const way of map.ways) way.id += 7000;
      map.firstNodeId = 500;
    },
    [],
  ],
  [
    'all nodes moved by a metre',
    (map) => {
      for (const [i, node] of Object.values(map.nodes).entries()) {
        node[0] += Math.cos(i);
        node[1] += Math.sin(i);
      }
    },
    [],
  ],
  [
    'all of it at once: split, other ids, moved by a metre',
    (map) => {
      for (const id of [1, 2, 3, 4, 5, 6, 7]) split(map, id, `${id * 1000 - 500}`, id + 100);
      for (const way of map.ways) way.id += 7000;
      for (const [i, node] of Object.values(map.nodes).entries()) node[1] += Math.sin(i);
    },
    [],
  ],
  [
    'a road drawn the other way round, tags kept',
    (map) => {
      wayOf(map, 2).refs.reverse();
    },
    [],
  ],
  ['a road renamed', setTags(2, { name: 'Windmill Lane' }), []],
  ['something of no weight mapped', setTags(2, { lit: 'yes', sidewalk: 'both' }), []],
  [
    'a house built beside the road',
    (map) => {
      for (const [i, [east, north]] of [
        [1500, 15],
        [1510, 15],
        [1510, 25],
        [1500, 25],
      ].entries())
        map.nodes[`house ${i}`] = [east!, north!];
      map.ways.push({
        id: 60,
        refs: ['house 0', 'house 1', 'house 2', 'house 3', 'house 0'],
        tags: { building: 'yes' },
      });
    },
    [],
  ],
  [
    'a road drawn 10 m beside where it was',
    (map) => {
      for (const east of [1250, 1500, 1750]) map.nodes[`${east}`] = [east, 10];
    },
    [],
  ],
  [
    'a road moved 200 m away',
    (map) => {
      for (const east of [3250, 3500, 3750]) map.nodes[`${east}`] = [east, 200];
    },
    ['new: map'],
  ],
  [
    'a road gone from the map, and its limit with it',
    (map) => {
      map.ways = map.ways.filter(({ id }) => id !== 3);
    },
    ['new: map'],
  ],
  [
    'a map that ends before the drive does',
    (map) => {
      map.ways = map.ways.filter(({ id }) => ![5, 6, 7, 24, 25, 26, 40].includes(id));
    },
    ['new: map'],
  ],
  [
    'a map read in part',
    (map) => {
      map.incomplete = ['The answer was cut short.'];
      delete wayOf(map, 2).tags['maxheight'];
    },
    ['new: map'],
  ],
  ['one-way along the drive', setTags(4, { oneway: 'yes' }), []],
  ['one-way against the drive', setTags(4, { oneway: '-1' }), ['new: access']],
  [
    'a turn forbidden that the drive does not make',
    (map) => {
      map.restrictions.push({ from: 2, via: '2000', to: 22, tags: { restriction: 'no_left_turn' } });
    },
    [],
  ],
  [
    'straight on forbidden',
    (map) => {
      map.restrictions.push({ from: 2, via: '2000', to: 3, tags: { restriction: 'no_straight_on' } });
    },
    ['new: access'],
  ],
  ['a road of a lower class', setTags(4, { highway: 'unclassified' }), ['road changed: road']],
  [
    'another road where the old one was',
    (map) => {
      Object.assign(wayOf(map, 4), { id: 90 });
      Object.assign(wayOf(map, 90).tags, { highway: 'secondary', name: 'Relief Road' });
    },
    ['road changed: road'],
  ],
  ['a ford', (map) => addNode(map, 3250, { ford: 'yes' }), ['new: water']],
  ['soft ground', setTags(4, { surface: 'mud' }), ['new: ground']],
];
