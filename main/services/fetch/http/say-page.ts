/** A page for people came where data was asked for. @param what `the list of regions`, `map data` */
export function sayPage(host: string, what: string): string {
  return `${host} sent a web page in place of ${what}. A network that asks for a login answers so: open any page in the browser, log in, and try again.`;
}
