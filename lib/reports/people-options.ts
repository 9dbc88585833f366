export const PERSON_ROLES = ['student', 'instructor', 'coordinator'] as const
export type PersonRole = (typeof PERSON_ROLES)[number]

/** Can sign in; has an account but nothing to sign in with yet; may not sign in. */
export const PERSON_STATES = ['active', 'no-password', 'disabled'] as const
export type PersonState = (typeof PERSON_STATES)[number]

/** What a list of people shows; all of it stands in the address, so that it can be kept and works without scripts. */
export type PeopleOptions = {
  /** '' shows all. */
  readonly search: string
  readonly role: PersonRole | null
  readonly classId: string | null
  readonly state: PersonState | null
  /** The page that begins after this person, or ends before that one; neither is the first page. */
  readonly after: string | null
  readonly before: string | null
}

export const PEOPLE_DEFAULTS: PeopleOptions = { search: '', role: null, classId: null, state: null, after: null, before: null }

const MOST_SEARCH = 80
const ID = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i
const UNSEEN = /[\u0000-\u001f\u007f]/g

type Params = Readonly<Record<string, string | readonly string[] | undefined>>

/** The settings an address names. What it does not name, or names wrongly, is as if it were not there. */
export function readPeopleOptions(params: Params): PeopleOptions {
  const text = (key: string): string => {
    const value = params[key]
    return (typeof value === 'string' ? value : value?.[0]) ?? ''
  }
  const id = (key: string): string | null => (ID.test(text(key)) ? text(key) : null)
  const after = id('after')
  return {
    search: [...text('q').replace(UNSEEN, ' ').trim()].slice(0, MOST_SEARCH).join(''),
    role: PERSON_ROLES.find((each) => each === text('role')) ?? null,
    classId: id('class'),
    state: PERSON_STATES.find((each) => each === text('state')) ?? null,
    after, before: after === null ? id('before') : null,
  }
}

/** The address of the list with some settings changed. */
export function peopleAddress(path: string, options: PeopleOptions, change: Partial<PeopleOptions> = {}): string {
  const { search, role, classId, state, after, before } = { ...options, ...change }
  const fields = { q: search, role, class: classId, state, after, before }
  const query = new URLSearchParams(Object.entries(fields).flatMap(([name, value]) => (value ? [[name, value]] : []))).toString()
  return query === '' ? path : `${path}?${query}`
}

/** Whether anything narrows the list. */
export const narrows = ({ search, role, classId, state }: PeopleOptions): boolean => search !== '' || role !== null || classId !== null || state !== null
