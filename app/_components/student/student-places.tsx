/** One class of a student, with the booth there and how many cautions are signed in its term; null where the reader does not keep it. */
export type StudentPlace = {
  readonly classId: string
  readonly name: string
  readonly term: string
  readonly active: boolean
  readonly booth: number | null
  readonly cautions: { readonly signed: number; readonly of: number; readonly unsigned: readonly string[] } | null
}

/** The student's classes, booths and cautions. */
export function StudentPlaces({ places }: { readonly places: readonly StudentPlace[] }) {
  return (
    <section className="grid content-start gap-2" aria-labelledby="places">
      <h2 id="places" className="text-2xl">Classes and cautions</h2>
      <ul className="divide-y divide-line border-y border-line">
        {places.map((place) => (
          <li key={place.classId} className="py-2">
            <p><strong>{place.name}</strong>, {place.term}, {whereText(place)}</p>
            {place.cautions && <p>Cautions signed in {place.cautions.signed} of {place.cautions.of} exercises.</p>}
            {place.cautions && place.cautions.unsigned.length > 0 && (
              <details>
                <summary className="flex min-h-12 cursor-pointer items-center underline underline-offset-4">{place.cautions.unsigned.length} not signed yet</summary>
                <ul className="list-disc pl-5">{place.cautions.unsigned.map((title) => <li key={title}>{title}</li>)}</ul>
              </details>
            )}
          </li>
        ))}
      </ul>
    </section>
  )
}

function whereText({ active, booth }: StudentPlace): string {
  if (!active) return 'no longer in it'
  return booth === null ? 'no booth' : `booth ${booth}`
}
