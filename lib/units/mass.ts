import { fixed, readQuantity, type Quantity } from './quantity'

/** A mass in kilograms. */
export type Kilograms = Quantity<'kg'>
export type MassUnit = 'lb' | 'kg' | 'oz' | 'g'

/** One avoirdupois pound is 0.45359237 kg exactly (international yard and pound agreement, 1959). */
export const KG_PER_POUND = 0.45359237

export const kg = (value: number): Kilograms => value as Kilograms
export const fromPounds = (pounds: number): Kilograms => kg(pounds * KG_PER_POUND)
export const toPounds = (mass: Kilograms): number => mass / KG_PER_POUND

const KG: Readonly<Record<MassUnit, number>> = { lb: KG_PER_POUND, kg: 1, oz: KG_PER_POUND / 16, g: 1 / 1000 }
const SPELLINGS = { ...KG, lbs: KG.lb, 'lb.': KG.lb, pound: KG.lb, pounds: KG.lb, libra: KG.lb, libras: KG.lb, kilo: 1, kilos: 1 }

/** Reads '33 lb', '15 kg', '1/2 lb'; `unit` holds when none is named. @throws RangeError naming what was typed */
export function parseMass(text: string, unit: MassUnit): Kilograms {
  return kg(readQuantity(text, 'a mass', SPELLINGS, unit, '33 lb or 15 kg'))
}

/** '1.25 lb', '0.57 kg'. @throws RangeError when the value is not a finite number */
export function formatMass(value: Kilograms, as: { readonly unit: MassUnit; readonly digits: number }): string {
  return `${fixed(value / KG[as.unit], as.digits)} ${as.unit}`
}
