/** One large figure and the word under it: '64, mark'. Only beside the sentence or verdict it belongs to. */
export function FigureWithWord({ figure, word }: { readonly figure: string; readonly word: string }) {
  return (
    <p className="flex flex-col items-end">
      <span className="figures text-5xl leading-none">{figure}</span>
      <span className="eyebrow">{word}</span>
    </p>
  )
}
