// Outside: ISO 6947 codes as a BS 499 position chart gives them beside the AWS test positions; 4F is PD and 4G is PE.
import { expect, it } from 'vitest'
import { isoPosition, POSITION_TOLERANCE_DEG } from '@/lib/procedure/positions'

it.each([
  ['1G', null, 'PA'], ['1F', null, 'PA'], ['2F', null, 'PB'], ['2G', null, 'PC'], ['4F', null, 'PD'], ['4G', null, 'PE'],
  ['3G', 'up', 'PF'], ['3F', 'up', 'PF'], ['3G', 'down', 'PG'], ['3F', 'down', 'PG'],
  ['5G', 'up', 'PH'], ['5F', 'up', 'PH'], ['5G', 'down', 'PJ'], ['5F', 'down', 'PJ'], ['6G', 'up', 'H-L045'], ['6G', 'down', 'J-L045'],
] as const)('%s welded %s is %s', (aws, progression, iso) => {
  expect(isoPosition(aws, progression)).toBe(iso)
})

it('6GR has no ISO code (from memory)', () => {
  expect(isoPosition('6GR', 'up')).toBeNull()
})

it('test positions hold within 5 degrees of slope and 10 of rotation (ISO 6947)', () => {
  expect(POSITION_TOLERANCE_DEG).toEqual({ slope: 5, rotation: 10 })
})
