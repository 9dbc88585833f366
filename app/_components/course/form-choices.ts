import { JOINTS } from '@/lib/procedure/exercise'
import { PROCESSES } from '@/lib/procedure/process'
import type { JointFact } from '@/lib/course/typed-exercise'
import type { Choice } from '../ui/select'

const asIs = (value: string): Choice => ({ value, label: value })

export const PROCESS_CHOICES: readonly Choice[] = PROCESSES.map(asIs)
export const JOINT_CHOICES: readonly Choice[] = JOINTS.map(asIs)
/** F is a fillet, G a groove. */
export const POSITIONS: readonly Choice[] = ['1F', '2F', '3F', '4F', '1G', '2G', '3G', '4G'].map(asIs)
export const POLARITY_CHOICES: readonly Choice[] = [
  { value: 'DCEP', label: 'DCEP (electrode positive)' }, { value: 'DCEN', label: 'DCEN (electrode negative)' }, { value: 'AC', label: 'AC' },
]
export const GAUGES: readonly Choice[] = [
  { value: 'in16', label: '1/16 in steps' }, { value: 'in32', label: '1/32 in steps' }, { value: 'in64', label: '1/64 in steps' }, { value: 'mm', label: 'Millimetres' },
]
export const FACT_NAMES: Readonly<Record<JointFact, string>> = {
  completePenetration: 'Complete penetration', transverseToTension: 'Across the tension', stiffenerToWeb: 'Stiffener to web',
}
