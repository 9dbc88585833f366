/**
 * The message catalogue is one file per namespace in this folder, each holding every language side by side:
 *
 *   export const learn = messages({ en: { greet: 'Hello {name}' }, es: { greet: 'Hola {name}' } })
 *
 * so a page carries only the namespaces it uses, and a key missing in one language does not compile.
 */
export const LOCALES = ['en', 'es'] as const
export type Locale = (typeof LOCALES)[number]

export type Messages<K extends string> = Readonly<Record<Locale, Readonly<Record<K, string>>>>

/** Holds all languages to the same keys at compile time. */
export function messages<K extends string>(catalogue: { en: Record<K, string>; es: Record<NoInfer<K>, string> }): Messages<K> {
  return catalogue
}

/**
 * A sentence in the reader's language, with `{name}` places filled in.
 *
 * @throws RangeError when the sentence has a place that `values` does not fill: a half-filled sentence never reaches a reader.
 */
export function say<K extends string>(
  catalogue: Messages<K>,
  locale: Locale,
  key: K,
  values: Readonly<Record<string, string | number>> = {},
): string {
  return catalogue[locale][key].replace(/\{(\w+)\}/g, (_, name: string) => {
    const value = values[name]
    if (value === undefined) throw new RangeError(`The sentence "${key}" needs a value for {${name}}.`)
    return String(value)
  })
}
