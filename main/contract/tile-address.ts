/**
 * The origin a tile address is fetched from, for the content security policy; undefined where it is no address.
 * Only plain host names are taken: nothing a user types may add a word to the policy.
 */
export function tileOrigin(address: string): string | undefined {
  const match = /^https:\/\/([a-z0-9.-]+(?::\d{1,5})?)\/[^\s]*$/i.exec(address);
  if (!match?.[1]) return undefined;
  if (!['{z}', '{x}', '{y}'].every((part) => address.includes(part))) return undefined;
  return `https://${match[1].toLowerCase()}`;
}
