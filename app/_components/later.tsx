import { lazy, Suspense, type ComponentType } from 'react'

/** A part of a screen that is fetched when it is first shown; until it is here its place is empty. */
export function later<Props extends object>(load: () => Promise<ComponentType<Props>>): ComponentType<Props> {
  const Part = lazy<ComponentType<Props>>(async () => ({ default: await load() }))
  return function Later(props: Props) {
    return (
      <Suspense fallback={null}>
        <Part {...props} />
      </Suspense>
    )
  }
}
