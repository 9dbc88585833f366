import { practiceAfterTest } from '../coaching/after-test'
import { causes, remedies, symptoms } from '../language/coaching'
import { qualification } from '../language/qualification'
import { scorecardWords } from '../language/scorecard'
import { say, type Locale } from '../language/say'
import { testDay } from '../language/test-day'
import type { Process } from '../procedure/process'
import { judgeGuidedBend } from '../qualification/bend'
import { judgeTestParts } from '../qualification/class-test'
import { continuityDue, CONTINUITY_SOURCE, firstGap, type ProcessUse } from '../qualification/continuity'
import { coverageOfTest } from '../qualification/coverage-of-test'
import { judgeFilletBreak } from '../qualification/fillet-break'
import { ISO_POSITIONS } from '../qualification/iso-positions'
import type { UnitSystem } from '../qualification/limits'
import { judgeMacroetch } from '../qualification/macroetch'
import { POSITIONS_SOURCE } from '../qualification/positions'
import type { TestReason } from '../qualification/test-result'
import type { TestParts } from '../schemas/test-attempt'
import type { Source } from '../source'
import { formatForReader } from '../units/display'
import { dateText } from './dates'
import { explainQualificationReason, explainThickness, positionName } from './explain-qualification'
import { shareText } from './share-text'

export type TestViewInput = {
  readonly passed: boolean
  readonly testedOn: Date
  readonly parts: TestParts
  readonly weld: {
    readonly weldType: 'fillet' | 'groove'
    readonly process: Process
    readonly position: string
    readonly progression: 'up' | 'down' | null
    readonly plateThicknessMm: number
    readonly nominalLegMm: number | null
  }
  /** The column of the code the program works in, which judged it. */
  readonly system: UnitSystem
  readonly forecast: number | null
  /** Every use of a process by this student that is on record, this test among them. */
  readonly uses: readonly ProcessUse[]
  readonly asOf: Date
}

export type ExaminedPart = { readonly name: string; readonly verdict: 'accept' | 'reject' | 'incomplete'; readonly word: string; readonly details: readonly string[] }
export type CoverageLine = { readonly system: string; readonly lines: readonly string[]; readonly source: string }
export type TestView = {
  readonly passed: boolean
  readonly word: string
  readonly on: string
  readonly judgedBy: string
  readonly forecast: string | null
  readonly reasons: readonly string[]
  readonly examined: readonly ExaminedPart[]
  /** Of a failed test; empty otherwise. */
  readonly practise: readonly string[]
  /** Of a passed test; empty otherwise. */
  readonly covers: readonly CoverageLine[]
  /** Of a passed test: until when it holds, or why it no longer does. */
  readonly until: { readonly text: string; readonly holds: boolean; readonly source: string } | null
}

type Reader = { readonly locale: Locale; readonly units: 'in' | 'mm' }

/** A recorded test as its reader sees it: what was examined and how it was judged, then what it covers, or what to practise. */
export function testView(input: TestViewInput, reader: Reader): TestView {
  const { passed, parts, weld, system, forecast } = input
  const { locale } = reader
  const { reasons } = judgeTestParts(parts, weld, system)
  return {
    passed,
    word: say(testDay, locale, passed ? 'passed' : 'failed'),
    on: say(testDay, locale, 'on', { date: dateText(input.testedOn, locale, 'UTC') }),
    judgedBy: say(testDay, locale, system === 'us' ? 'structuralUs' : 'structuralSi'),
    forecast: forecast === null ? null : shareText(forecast),
    reasons: reasons.map((reason) => explainQualificationReason(reason, { locale, rules: system })),
    examined: examined(input, reader),
    practise: passed ? [] : practice(reasons, weld, locale),
    covers: passed ? covers(input, reader) : [],
    until: passed ? until(input, locale) : null,
  }
}

function examined({ parts, weld, system }: TestViewInput, reader: Reader): ExaminedPart[] {
  const { locale } = reader
  const part = (name: string, verdict: 'accept' | 'reject' | 'replace' | 'incomplete', reasons: readonly TestReason[], sizes: string | null = null): ExaminedPart => ({
    name, verdict: verdict === 'replace' ? 'incomplete' : verdict, word: say(testDay, locale, verdict),
    details: [...(sizes === null ? [] : [sizes]), ...reasons.map((reason) => explainQualificationReason(reason, { locale, rules: system }))],
  })
  return [
    ...(parts.visual === null ? [] : [part(say(testDay, locale, 'visual'), parts.visual, [])]),
    ...(parts.bends ?? []).map(({ face, indications }, index) => {
      const { verdict, reasons } = judgeGuidedBend(indications, system)
      return part(say(testDay, locale, 'bend', { n: index + 1, face: say(testDay, locale, face) }), verdict, reasons, sizesText(indications.map(({ sizeMm }) => sizeMm), reader))
    }),
    ...(parts.filletBreak ? [brokenPart(parts.filletBreak, system, reader, part)] : []),
    ...(parts.macroetch ? [(({ verdict, reasons }) => part(say(testDay, locale, 'macroetch'), verdict, reasons))(judgeMacroetch({ type: weld.weldType, nominalLegMm: weld.nominalLegMm, ...parts.macroetch }, system))] : []),
  ]
}

type MakePart = (name: string, verdict: 'accept' | 'reject', reasons: readonly TestReason[], sizes: string | null) => ExaminedPart

function brokenPart(specimen: NonNullable<TestParts['filletBreak']>, system: UnitSystem, reader: Reader, part: MakePart): ExaminedPart {
  const { verdict, reasons } = judgeFilletBreak(specimen, system)
  const name = say(testDay, reader.locale, 'break')
  return part(name, verdict, reasons, specimen.foldedFlat ? say(testDay, reader.locale, 'foldedFlat') : sizesText(specimen.inclusionsMm, reader))
}

function sizesText(sizesMm: readonly number[], { locale, units }: Reader): string {
  if (sizesMm.length === 0) return say(testDay, locale, 'nothingSeen')
  const sum = sizesMm.reduce((total, size) => total + size, 0)
  return say(testDay, locale, 'largest', { size: formatForReader(Math.max(...sizesMm), units), sum: formatForReader(sum, units) })
}

function practice(reasons: readonly TestReason[], weld: TestViewInput['weld'], locale: Locale): string[] {
  const tries = practiceAfterTest(reasons, weld).flatMap(({ symptom, causes: usual }) =>
    usual.map(({ cause, remedy }) => say(testDay, locale, 'practiseLead', { symptom: symptoms[locale][symptom], cause: causes[locale][cause], remedy: remedies[locale][remedy] })))
  return reasons.includes('visual-rejected') ? [say(testDay, locale, 'practiseVisual'), ...tries] : tries
}

function covers({ weld, system }: TestViewInput, reader: Reader): CoverageLine[] {
  const { locale, units } = reader
  // A layer is not a pass, and nobody writes layers down: the tables that turn on them are told so.
  const coverage = coverageOfTest({ ...weld, layers: null }, system)
  if (coverage === null) return [{ system: say(testDay, locale, 'structural'), lines: [say(testDay, locale, 'notListed')], source: sourceText(POSITIONS_SOURCE, locale) }]
  const { structural, iso } = coverage
  const list = (names: readonly string[]): string => (names.length === 0 ? say(testDay, locale, 'none') : names.join(', '))
  const named = (positions: typeof structural.positions.groove): string => list(positions.map((position) => positionName(position, locale)))
  const vertical = weld.progression && structural.positions[weld.weldType].includes('V') ? [say(testDay, locale, 'vertical', { way: say(testDay, locale, weld.progression) })] : []
  return [
    {
      system: say(testDay, locale, 'structural'),
      lines: [
        say(testDay, locale, 'grooveIn', { positions: named(structural.positions.groove) }),
        say(testDay, locale, 'filletIn', { positions: named(structural.positions.fillet) }),
        ...vertical,
        say(testDay, locale, 'thickness', { range: explainThickness(structural.thickness, { locale, units, rules: system }) }),
      ],
      source: sourceText(POSITIONS_SOURCE, locale),
    },
    {
      system: say(testDay, locale, 'iso'), // written in millimetres, whoever reads it
      lines: [
        say(testDay, locale, weld.weldType === 'groove' ? 'grooveIn' : 'filletIn', { positions: list(ISO_POSITIONS.filter((position) => iso.positions.positions.includes(position))) }),
        say(testDay, locale, 'thickness', { range: explainThickness(iso.thickness, { locale, units: 'mm', rules: 'iso' }) }),
      ],
      source: iso.positions.sources.map((source) => sourceText(source, locale)).join('; '),
    },
  ]
}

function until({ testedOn, uses, weld: { process }, asOf }: TestViewInput, locale: Locale): TestView['until'] {
  const source = sourceText(CONTINUITY_SOURCE, locale)
  const day = (date: Date): string => dateText(date, locale, 'UTC')
  const gap = firstGap(testedOn, uses, process, asOf)
  if (gap) return { text: say(testDay, locale, 'gap', { from: day(gap.from) }), holds: false, source }
  const due = continuityDue([...uses, { process, on: testedOn }], process, asOf)
  if (due === null) return null
  return { text: say(qualification, locale, 'due-by', { process, date: dateText(due.dueBy, locale, 'UTC') }), holds: !due.lapsed, source }
}

/** 'AWS D1.1, Table 4.10: from memory, not read again'. */
const sourceText = ({ title, clause, status }: Source, locale: Locale): string =>
  `${[title, clause].filter(Boolean).join(', ')}: ${say(scorecardWords, locale, status)}`
