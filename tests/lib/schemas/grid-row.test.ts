import { describe, expect, it } from 'vitest'
import { BLANK_ROW, cellOfPath, cellProblem, isEmptyRow, readingsOfRow, repeatSize, type GridFrame, type GridRow } from '@/lib/schemas/grid-row'
import { readShortForm } from '@/lib/schemas/indication-short-form'
import { INDICATION_KINDS } from '@/lib/scoring/types'

const frame: GridFrame = { places: ['1', '3', '5'], boxes: ['width', 'legA', 'legB'], units: 'in' }
const row = (over: Partial<GridRow> = {}): GridRow => ({ ...BLANK_ROW, ...over })

describe('indications in their short form', () => {
  it('hold kind, place, sizes in the order of a form, and the toe', () => {
    expect(readShortForm('undercut, 3, 1/64, 1/2, lower; pore, 5, 1/16')).toEqual({
      kind: 'indications',
      indications: [
        { kind: 'undercut', toe: 'B', at: '3', depth: '1/64', length: '1/2', diameter: '', height: '' },
        { kind: 'pore', toe: null, at: '5', depth: '', length: '', diameter: '1/16', height: '' },
      ],
    })
  })

  it('may shorten a kind as long as one only begins so', () => {
    expect(readShortForm('und, 3')).toMatchObject({ indications: [{ kind: 'undercut', at: '3' }] })
    expect(readShortForm('pores, 3')).toMatchObject({ indications: [{ kind: 'pore' }] })
    expect(readShortForm('crack, 3')).toMatchObject({ indications: [{ kind: 'crack' }] })
    expect(readShortForm('cr, 3')).toMatchObject({ kind: 'problem', message: expect.stringContaining('not one kind') }) // crack, crater crack, crater pipe
    expect(readShortForm('s, 3')).toMatchObject({ kind: 'problem' }) // spatter, slag
  })

  it('keep a decimal comma, and leave out sizes from the end', () => {
    expect(readShortForm('undercut, 75,5, 0,4')).toMatchObject({ indications: [{ at: '75,5', depth: '0,4', length: '' }] })
  })

  it('without a place, or with too many sizes, say so', () => {
    expect(readShortForm('pore')).toMatchObject({ kind: 'problem', message: expect.stringContaining('Say where') })
    expect(readShortForm('pore, 1, 2, 3')).toMatchObject({ kind: 'problem', message: expect.stringContaining('more sizes') })
  })

  it('of nothing are nothing', () => {
    expect(readShortForm(' ; ')).toEqual({ kind: 'indications', indications: [] })
  })
})

describe('a row of the grid', () => {
  it('becomes the readings a form would send, a gap staying a gap', () => {
    const read = readingsOfRow(row({ sizes: { '0.width': '5/16', '2.legB': '.31' }, looked: true, craters: 'Y', fusion: '' }), frame)
    expect(read).toMatchObject({ kind: 'readings', readings: { lookedFor: [...INDICATION_KINDS], cratersFilled: true, fusionComplete: null } })
    if (read.kind !== 'readings') return
    expect(read.readings.stations.map(({ at, width, legB }) => [at, width, legB])).toEqual([['1', '5/16', ''], ['3', '', ''], ['5', '', '.31']])
  })

  it('says at each cell what cannot be read, all at once', () => {
    const read = readingsOfRow(row({ sizes: { '0.width': 'wide', '1.legA': '-2' }, craters: 'maybe', seen: 'hole, 3' }), frame)
    expect(read).toMatchObject({ kind: 'problems', cells: { '0.width': expect.stringContaining('wide'), '1.legA': expect.any(String), craters: expect.stringContaining('y or n'), seen: expect.stringContaining('hole') } })
    expect(cellProblem('remark', 'anything at all', 'in')).toBeNull()
  })

  it('with only a remark is empty', () => {
    expect(isEmptyRow(row({ remark: 'Nice.' }))).toBe(true)
    expect(isEmptyRow(row({ sizes: { '0.width': ' ' } }))).toBe(true)
    expect(isEmptyRow(row({ fusion: 'y' }))).toBe(false)
  })

  it('repeats a station only at the grader’s key, from the box they are in, and never invents one', () => {
    const before = row({ sizes: { '0.width': '5/16', '0.legA': '1/4', '0.legB': '1/4', '1.width': '11/32' } })
    expect(repeatSize(before, frame, 1, 'legA')?.sizes).toMatchObject({ '1.width': '11/32', '1.legA': '1/4', '1.legB': '1/4' })
    expect(repeatSize(before, frame, 0, 'legB')?.sizes['0.legB']).toBe('1/4')
    expect(repeatSize(row(), frame, 1, 'width')).toBeNull()
    expect(repeatSize(row({ sizes: { '0.width': '5/16' } }), frame, 0, 'width')).toBeNull()
    expect(before.sizes['1.legA']).toBeUndefined()
  })

  it('finds the cell a sentence about its readings belongs to', () => {
    expect(['readings.stations.2.width', 'readings.indications.0.at', 'readings.cratersFilled', 'comment', 'revision'].map(cellOfPath)).toEqual(['2.width', 'seen', 'craters', 'remark', null])
  })
})
