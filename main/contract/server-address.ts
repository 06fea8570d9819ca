/** The servers that maps are fetched from until the user names others. Both are public, shared by everybody and run by a few. */
export const PUBLIC_SERVERS = {
  /** answers what is asked of it in Overpass's language */
  line: 'https://overpass-api.de/api/interpreter',
  /** lists extracts of regions */
  region: 'https://download.geofabrik.de/index-v1.json',
} as const;

/** Whether a text is a server's address: http or https, a host by name or number, and no password in it. */
export function isServerAddress(text: string): boolean {
  return /^https?:\/\/(?:[a-z0-9.-]+|\[[0-9a-f:.]+\])(?::\d{1,5})?(?:[/?][^\s#]*)?$/iu.test(text);
}

/** Whether an address is one of the public servers: shared, and to be asked little. */
export function isPublicServer(address: string): boolean {
  return Object.values<string>(PUBLIC_SERVERS).includes(address);
}
