/** Keeps a short last word with the one before it, so that no line of a heading is a lone '3?'. */
export function bindLastWord(text: string): string {
  return text.replace(/\s+(\S{1,4})$/, ' $1')
}
