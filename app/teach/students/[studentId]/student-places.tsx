import type { StudentPlace } from '@/app/_server/views/student-places'

/** The student's classes, booths and cautions. */
export function StudentPlaces({ places }: { readonly places: readonly StudentPlace[] }) {
  return (
    <section className="grid gap-2" aria-labelledby="places">
      <h2 id="places" className="text-2xl">Classes and cautions</h2>
      <ul className="divide-y divide-line border-y border-line">
        {places.map((place) => (
          <li key={place.classId} className="py-2">
            <p><strong>{place.name}</strong>, {place.term}, {whereText(place)}</p>
            {place.cautions && <p>Cautions signed in {place.cautions.signed} of {place.cautions.of} exercises.</p>}
            {place.cautions && place.cautions.unsigned.length > 0 && <p className="text-base text-ink-2">Unsigned: {place.cautions.unsigned.join('; ')}.</p>}
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
