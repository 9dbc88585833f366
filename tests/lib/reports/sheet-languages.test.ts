import { describe, expect, it } from 'vitest'
import { sheetLanguages } from '@/lib/reports/sheet-languages'

describe('the languages of a sheet', () => {
  it('are those the class reads, in one order', () => {
    expect(sheetLanguages(undefined, ['es'])).toEqual(['es'])
    expect(sheetLanguages(undefined, ['es', 'en'])).toEqual(['en', 'es'])
  })

  it('are all while nobody has joined', () => {
    expect(sheetLanguages(undefined, [])).toEqual(['en', 'es'])
  })

  it('are those asked for, whatever the class reads', () => {
    expect(sheetLanguages('es', ['en'])).toEqual(['es'])
    expect(sheetLanguages('both', ['en'])).toEqual(['en', 'es'])
    expect(sheetLanguages('xx', ['en'])).toEqual(['en'])
  })
})
