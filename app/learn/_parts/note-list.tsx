import type { NoteView } from '@/app/_server/views/class-life'

/** Notes of a class, as written: line ends are kept. */
export function NoteList({ notes }: { readonly notes: readonly NoteView[] }) {
  return (
    <ul className="divide-y divide-line border-y border-line">
      {notes.map((note) => (
        <li key={note.id} className="py-3">
          <p className="font-head text-lg leading-tight font-semibold">{note.head}</p>
          {note.about && <p className="text-base text-ink-2">{note.about}</p>}
          <p className="mt-1 max-w-prose break-words whitespace-pre-line">{note.body}</p>
          <p className="mt-1 text-base text-ink-2">{note.by}</p>
        </li>
      ))}
    </ul>
  )
}
