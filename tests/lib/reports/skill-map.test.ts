import { expect, it } from 'vitest'
import { skillMap } from '@/lib/reports/skill-map'

const at = (id: string, process: 'SMAW' | 'FCAW-S', position: string, progression: 'up' | 'down' | null = null) => ({ id, exercise: { process, position, progression } })

it('goes by process, fillets before grooves, flat before overhead, up and down apart', () => {
  const map = skillMap([at('g', 'FCAW-S', '1G'), at('u', 'FCAW-S', '3F', 'up'), at('d', 'FCAW-S', '3F', 'down'), at('a', 'FCAW-S', '1F'), at('s', 'SMAW', '2F')])
  expect(map.map(({ process }) => process)).toEqual(['SMAW', 'FCAW-S'])
  expect(map[1]?.rows.map(({ position, progression }) => `${position} ${progression}`)).toEqual(['1F null', '3F down', '3F up', '1G null'])
})

it('keeps the class’s order within a position, and shows an exercise of two classes once', () => {
  const [block] = skillMap([at('tee', 'SMAW', '2F'), at('lap', 'SMAW', '2F'), at('tee', 'SMAW', '2F')])
  expect(block?.rows).toHaveLength(1)
  expect(block?.rows[0]?.cells.map(({ id }) => id)).toEqual(['tee', 'lap'])
})

it('is empty without exercises', () => expect(skillMap([])).toEqual([]))
