/*
 * How long words between the people of a class may be. In a file of its own: screens need it without the schemas. Common practice, no source.
 */

/** Asking for a look: two lines on a phone. */
export const MOST_LOOK_NOTE = 200
/** A note to a class. */
export const MOST_CLASS_NOTE = 2000
/** The name of a shared tablet. */
export const MOST_TABLET_NAME = 40
/** A note on a student that only staff see. */
export const MOST_STAFF_NOTE = 2000
