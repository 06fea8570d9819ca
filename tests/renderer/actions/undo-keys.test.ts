import { expect, it } from 'vitest';
import { undoKey } from '../../../renderer/actions/undo-keys.ts';

const key = (name: string, ...held: ('ctrlKey' | 'metaKey' | 'shiftKey' | 'altKey')[]) => ({
  key: name,
  ctrlKey: held.includes('ctrlKey'),
  metaKey: held.includes('metaKey'),
  shiftKey: held.includes('shiftKey'),
  altKey: held.includes('altKey'),
});

it('Ctrl or Cmd and Z take back, with Shift, or Ctrl and Y, they make again; nothing else does', () => {
  expect(undoKey(key('z', 'ctrlKey'))).toBe('undo');
  expect(undoKey(key('z', 'metaKey'))).toBe('undo');
  expect(undoKey(key('Z', 'ctrlKey', 'shiftKey'))).toBe('redo');
  expect(undoKey(key('y', 'ctrlKey'))).toBe('redo');
  for (const other of [key('z'), key('z', 'altKey', 'ctrlKey'), key('y', 'metaKey'), key('x', 'ctrlKey')])
    expect(undoKey(other)).toBeUndefined();
});
