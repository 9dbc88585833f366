import { LiveLine } from '@/app/_components/board/live-line'
import { QueueList } from '@/app/_components/board/queue-list'
import { QueueOrderForm } from '@/app/_components/board/queue-order-form'
import { LinkButton } from '@/app/_components/ui/link-button'
import type { ClassBoard } from '@/app/_server/views/class-board'
import { BeenThereButton } from './been-there-button'

/** What waits in the class, kept up to date by itself, with the ways to take it. */
export function QueueSection({ board, path }: { readonly board: ClassBoard; readonly path: string }) {
  const { queue, options, choices, grids } = board
  return (
    <section aria-labelledby="waiting" className="grid content-start gap-3">
      <h2 id="waiting" className="text-2xl">Waiting for you</h2>
      <LiveLine events={`/api/events/classes/${board.classRecord.id}`} state={board.state} asOf={board.asOf} address={board.address} />
      {choices.booths.length > 1 && !options.projector && <QueueOrderForm path={path} options={options} booths={choices.booths} />}
      {queue.length === 0 ? <p className="text-ink-2">When a student sends a coupon or asks you to look, it appears here.</p> : (
        <QueueList rows={queue} {...(!options.projector && { beenThere: (lookId: string, who: string) => <BeenThereButton lookId={lookId} who={who} /> })} />
      )}
      {grids.length > 0 && !options.projector && (
        <div className="grid gap-2">
          <h3 className="text-xl">Grade by keyboard</h3>
          <div className="flex flex-wrap gap-2">{grids.map((grid) => <LinkButton key={grid.exerciseId} href={grid.href}>{`${grid.title}: ${grid.count}`}</LinkButton>)}</div>
        </div>
      )}
    </section>
  )
}
