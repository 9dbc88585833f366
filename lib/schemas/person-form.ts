import { uuid } from './field'
import { rosterNamesSchema } from './person'

/** Other names for an account that exists, by the rules of the join form. */
export const changedNamesSchema = rosterNamesSchema({ locale: 'en', units: 'in' }).extend({ personId: uuid })
