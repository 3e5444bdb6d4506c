/** Month names by their first letters, English first, then the neighbours that exports are written in. */
const STARTS: [string, number][] = [
  ["jan", 1],
  ["ene", 1],
  ["gen", 1],
  ["feb", 2],
  ["fév", 2],
  ["fev", 2],
  ["mar", 3],
  ["mär", 3],
  ["mrz", 3],
  ["maa", 3],
  ["mrt", 3],
  ["apr", 4],
  ["abr", 4],
  ["avr", 4],
  ["may", 5],
  ["mai", 5],
  ["mei", 5],
  ["mag", 5],
  ["juin", 6],
  ["jun", 6],
  ["giu", 6],
  ["juil", 7],
  ["jul", 7],
  ["lug", 7],
  ["aug", 8],
  ["ago", 8],
  ["aoû", 8],
  ["aou", 8],
  ["sep", 9],
  ["set", 9],
  ["oct", 10],
  ["okt", 10],
  ["ott", 10],
  ["nov", 11],
  ["dec", 12],
  ["dez", 12],
  ["dic", 12],
  ["déc", 12],
];

/** Month (1-12) of a name or its abbreviation, or null. */
export function monthFromName(name: string): number | null {
  const key = name.toLowerCase();
  return STARTS.find(([start]) => key.startsWith(start))?.[1] ?? null;
}
