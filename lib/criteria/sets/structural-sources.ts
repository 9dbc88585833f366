import type { Source, SourceStatus } from '../../source'

const CODE = 'AWS D1.1/D1.1M, Structural Welding Code: Steel'

/** A citation of the visual acceptance table: Table 6.1 up to 2015, Table 8.1 from 2020. */
export function visual(item: string, status: SourceStatus, note?: string): Source {
  return { title: CODE, clause: `Table 8.1 (Table 6.1 before 2020), item ${item}`, status, ...(note !== undefined && { note }) }
}

/** A citation of the weld profile clause: 5.24 up to 2010, 5.23 in 2015, 7.23 from 2020. */
export function profile(where: string, status: SourceStatus, note?: string): Source {
  return { title: CODE, clause: `7.23 (5.23 or 5.24 before 2020)${where}`, status, ...(note !== undefined && { note }) }
}

/** A citation of the visual examination of a welder's test weld: 4.8.1 in 2000, 4.9.1 in 2010, 6.10.1 from 2020. */
export function testWeld(status: SourceStatus, note?: string): Source {
  return { title: CODE, clause: '6.10.1 (4.9.1 before 2020)', status, ...(note !== undefined && { note }) }
}
