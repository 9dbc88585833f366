const MS_PER_DAY = 24 * 3600 * 1000
/** A message stays in sight for a week: until every class that meets weekly has met. Common practice, no source. */
const MESSAGE_DAYS = 7

/** The earliest day whose messages a class still sees at the top, today counted; both are dates without time, at midnight UTC. */
export const firstMessageDay = (today: Date): Date => new Date(today.getTime() - (MESSAGE_DAYS - 1) * MS_PER_DAY)
