/** The browser and system that a browser's own name of itself tells of: 'Firefox, Windows'. null when it tells neither. */
export function browserName(device: string | null): string | null {
  const found = (names: readonly string[]): string | undefined => names.find((name) => device?.includes(name))?.replace(/^Edg$/, 'Edge')
  return [found(['Firefox', 'Edg', 'Chrome', 'Safari']), found(['Android', 'iPhone', 'iPad', 'Windows', 'Mac', 'Linux'])].filter(Boolean).join(', ') || null
}
