import { readFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, it } from 'vitest'

type Locked = { version?: string; resolved?: string; integrity?: string; link?: boolean; inBundle?: boolean }
type Manifest = { dependencies: Record<string, string>; devDependencies: Record<string, string>; engines: { node: string } }

const root = path.join(import.meta.dirname, '../..')
const read = (name: string): string => readFileSync(path.join(root, name), 'utf8')
const lock = JSON.parse(read('package-lock.json')) as { packages: Record<string, Locked> }
const manifest = JSON.parse(read('package.json')) as Manifest
const packages = Object.entries(lock.packages).filter(([place]) => place !== '')

/** The first release of each that holds the fixes known in November 2026; asking the registry for advisories is not always possible. */
const FLOORS = { next: '16.4.5', sharp: '0.35.4', 'next-auth': '4.24.15' }

const copiesOf = (name: string): Locked[] =>
  packages.filter(([place]) => place === `node_modules/${name}` || place.endsWith(`/node_modules/${name}`)).map(([, locked]) => locked)

function isAtLeast(version: string, floor: string): boolean {
  const numbers = (text: string): number[] => text.split('-', 1).join('').split('.').map(Number)
  const [have, need] = [numbers(version), numbers(floor)]
  const first = need.findIndex((number, place) => have[place] !== number)
  if (first === -1) return !version.includes('-') // a pre-release of the floor comes before it
  return (have[first] ?? 0) > (need[first] ?? 0)
}

describe('locked versions', () => {
  it.each(Object.entries(FLOORS))('keep every copy of %s at %s or newer', (name, floor) => {
    const copies = copiesOf(name)
    expect(copies.length).toBeGreaterThan(0)
    for (const { version } of copies) expect(isAtLeast(String(version), floor), `${name} ${version}`).toBe(true)
  })

  it.each([['16.4.5', true], ['16.4.6', true], ['16.10.0', true], ['17.0.0', true], ['16.4.4', false], ['15.9.9', false], ['16.4.5-canary.1', false]])('are compared by number: %s', (version, expected) => {
    expect(isAtLeast(version, '16.4.5')).toBe(expected)
  })

  it('name no host, so that any mirror of the registry can serve them', () => {
    expect(packages.filter(([, { resolved }]) => resolved !== undefined).map(([place]) => place)).toEqual([])
  })

  it('carry a checksum each, but for those inside another package', () => {
    expect(packages.length).toBeGreaterThan(300)
    expect(packages.filter(([, { integrity, link, inBundle }]) => !integrity && !link && !inBundle).map(([place]) => place)).toEqual([])
  })

  it('are asked for exactly, without ranges', () => {
    const asked = Object.entries({ ...manifest.dependencies, ...manifest.devDependencies })
    expect(asked.filter(([, version]) => !/^\d+\.\d+\.\d+(-[\w.]+)?$/.test(version))).toEqual([])
  })

  it('give Prisma one version in all its parts', () => {
    const parts = ['prisma', '@prisma/client', '@prisma/adapter-pg', '@prisma/driver-adapter-utils'].flatMap(copiesOf).map(({ version }) => version)
    expect(new Set(parts)).toEqual(new Set([manifest.dependencies.prisma]))
    const engine = /\.([0-9a-f]{40})$/
    const commitOf = (name: string): string | undefined => engine.exec(copiesOf(name)[0]?.version ?? '')?.[1]
    expect(commitOf('@prisma/schema-engine-wasm')).toBe(commitOf('@prisma/engines-version'))
  })
})
