import 'server-only'

/** The place where photos are kept did not do its work: an operator's matter, so the message is for the log. */
export class StoreDown extends Error {
  override readonly name = 'StoreDown'
}
