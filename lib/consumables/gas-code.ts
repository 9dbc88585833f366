/**
 * A shielding gas as ISO 14175 writes it, from what people write: 'CO2' and '100% CO2' are C1; '75/25', 'Ar 80 / CO2 20' and
 * 'Ar-25CO2' are M21 (argon with 15 to 25 % carbon dioxide, argon first where neither is named). Anything else stands as written,
 * in capitals.
 */
export function gasCode(gas: string): string {
  const written = gas.trim().toUpperCase()
  const tokens = written.replace(/₂/g, '2').match(/CO2|AR(?:GON)?|\d+(?:\.\d+)?|[A-Z]\w*/g) ?? []
  const names = tokens.filter((token) => /^[A-Z]/.test(token))
  const shares = tokens.filter((token) => /^\d/.test(token)).map(Number)
  if (names.some((name) => name !== 'CO2' && !name.startsWith('AR'))) return written
  const hasArgon = names.some((name) => name.startsWith('AR'))
  if (names.includes('CO2') && !hasArgon && (shares.length === 0 || (shares.length === 1 && shares[0] === 100))) return 'C1'
  const carbonDioxide = carbonDioxideShare(names, shares)
  return carbonDioxide !== null && carbonDioxide >= 15 && carbonDioxide <= 25 ? 'M21' : written
}

function carbonDioxideShare(names: readonly string[], shares: readonly number[]): number | null {
  const [first, second] = shares
  if (first === undefined || shares.length > 2) return null
  if (second !== undefined) return first + second === 100 ? (names[0] === 'CO2' ? first : second) : null
  if (names.length < 2) return null
  return first <= 50 ? first : 100 - first
}
