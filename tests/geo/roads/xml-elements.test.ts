import { expect, it } from 'vitest';
import { NodeBatcher } from '../../../geo/roads/node-batcher.ts';
import { mergeTags, setTag } from '../../../geo/roads/set-tag.ts';
import { XmlElements } from '../../../geo/roads/xml-elements.ts';

it('an OSM XML way or relation of more parts than any has is refused', () => {
  const refuse = (message: string): never => {
    throw new Error(message);
  };
  const elements = new XmlElements({}, new NodeBatcher({}), refuse);
  elements.open('way', { id: '10' });
  for (let i = 0; i < 500_000; i++) elements.child('nd', { ref: '1' });
  expect(() => elements.child('nd', { ref: '1' })).toThrow('way 10 has more than 500000 nodes');
  elements.open('relation', { id: '5' });
  const member = { type: 'way', ref: '1', role: '' };
  for (let i = 0; i < 500_000; i++) elements.child('member', member);
  expect(() => elements.child('member', member)).toThrow('relation 5 has more than 500000 members');
});

it('an OSM XML node without a place is counted, one with half a place refused, and a member is of a known kind', () => {
  const said: string[] = [];
  const elements = new XmlElements({}, new NodeBatcher({}), (message) => {
    said.push(message);
    throw new Error(message);
  });
  elements.open('node', { id: '1' });
  expect(elements.notes()).toEqual(['1 of its nodes have no place and are left out.']);
  expect(() => elements.open('node', { id: '2', lat: '50' })).toThrow(/node 2/);
  expect(() => elements.open('node', { id: '2', lon: '7' })).toThrow(/node 2/);
  elements.open('relation', { id: '5' });
  for (const type of ['node', 'way', 'relation']) elements.child('member', { type, ref: '1' });
  expect(() => elements.child('member', { type: 'area', ref: '1' })).toThrow(
    'relation 5 has a member of no known kind',
  );
});

it('a key of a name of the program’s own is an ordinary key', () => {
  const tags: Record<string, string> = {};
  setTag(tags, '__proto__', 'x');
  setTag(tags, 'highway', 'track');
  expect(Object.entries(mergeTags([tags, { highway: 'path' }]))).toEqual([
    ['__proto__', 'x'],
    ['highway', 'path'],
  ]);
});
