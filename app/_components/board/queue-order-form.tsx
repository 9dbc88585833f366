import Link from 'next/link'
import { BOARD_DEFAULTS, boardAddress, boardFields, type BoardOptions } from '@/lib/reports/board-options'
import { Button } from '../ui/button'
import { Select } from '../ui/select'

type Props = { readonly path: string; readonly options: BoardOptions; readonly booths: readonly number[] }

/** The order in which the queue is taken: longest waiting first, or booth by booth from where one stands. Works without scripts. */
export function QueueOrderForm({ path, options, booths }: Props) {
  const kept = boardFields({ ...options, queue: BOARD_DEFAULTS.queue, startBooth: BOARD_DEFAULTS.startBooth })
  return (
    <details open={options.queue === 'booth'}>
      <summary className="flex min-h-12 cursor-pointer items-center underline underline-offset-4">{options.queue === 'oldest' ? 'Longest waiting first' : 'Nearest booth first'}</summary>
      <form key={JSON.stringify(options)} action={path} className="grid items-end gap-3 pb-2 sm:grid-cols-[1fr_auto] xl:grid-cols-1">
        {kept.map(([name, value]) => <input key={name} type="hidden" name={name} value={value} />)}
        <input type="hidden" name="queue" value="booth" />
        <Select label="Walk on from booth" name="start" defaultValue={String(options.startBooth ?? booths[0] ?? '')} choices={booths.map((each) => ({ value: String(each), label: `Booth ${each}` }))} />
        <Button type="submit">Nearest booth first</Button>
      </form>
      {options.queue === 'booth' && <Link href={boardAddress(path, options, { queue: 'oldest', startBooth: null })} className="inline-flex min-h-12 items-center">Longest waiting first</Link>}
    </details>
  )
}
