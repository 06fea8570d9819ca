import type { Scene } from '../scene/scene.ts';

/** Works something out once for each scene: a scene never changes, and is read at every frame of the picture. */
export function oncePerScene<T>(workOut: (scene: Scene) => T): (scene: Scene) => T {
  const known = new WeakMap<Scene, { readonly value: T }>();
  return (scene) => {
    const before = known.get(scene);
    if (before) return before.value;
    const value = workOut(scene);
    known.set(scene, { value });
    return value;
  };
}
