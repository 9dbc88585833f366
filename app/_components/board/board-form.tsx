import { BOARD_DEFAULTS, boardFields, type BoardOptions } from '@/lib/reports/board-options'
import { Button } from '../ui/button'
import { Select } from '../ui/select'
import { TextInput } from '../ui/text-input'

type BoardFormProps = {
  readonly path: string
  readonly options: BoardOptions
  readonly processes: readonly string[]
  readonly exercises: readonly { readonly id: string; readonly title: string }[]
}

const ALL = { value: '', label: 'All' }
const booth = (value: number | null): string => (value === null ? '' : String(value))

/** Sorts and filters the board. A plain form that asks for the page's own address: it works without scripts, and the result can be kept. */
export function BoardForm({ path, options, processes, exercises }: BoardFormProps) {
  const kept = boardFields({ ...BOARD_DEFAULTS, queue: options.queue, startBooth: options.startBooth, projector: options.projector })
  return (
    <form key={JSON.stringify(options)} action={path} className="grid items-end gap-3 sm:grid-cols-2 lg:grid-cols-3">
      {kept.map(([name, value]) => <input key={name} type="hidden" name={name} value={value} />)}
      {!options.projector && (
        <Select
          label="Sort by" name="sort" defaultValue={options.sort}
          choices={[
            { value: 'booth', label: 'Booth' }, { value: 'name', label: 'Family name' }, { value: 'last', label: 'Longest without a coupon' },
            ...(options.exercise === null ? [] : [{ value: 'chance', label: 'Lowest chance in the exercise shown' }]),
          ]}
        />
      )}
      <Select label="Exercise" name="exercise" defaultValue={options.exercise ?? ''} choices={[ALL, ...exercises.map(({ id, title }) => ({ value: id, label: title }))]} />
      {processes.length > 1 && <Select label="Process" name="process" defaultValue={options.process ?? ''} choices={[ALL, ...processes.map((each) => ({ value: each, label: each }))]} />}
      <TextInput label="From booth" name="from" inputMode="numeric" pattern="[0-9]*" figures defaultValue={booth(options.fromBooth)} />
      <TextInput label="To booth" name="to" inputMode="numeric" pattern="[0-9]*" figures defaultValue={booth(options.toBooth)} />
      <Button type="submit">Show</Button>
    </form>
  )
}
