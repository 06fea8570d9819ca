import { expect, it } from 'vitest';
import { NodeBatcher } from '../../../geo/roads/node-batcher.ts';
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
