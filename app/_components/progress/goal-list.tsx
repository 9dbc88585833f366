/** What to aim for, the first thing first and in bold. */
export function GoalList({ goals }: { readonly goals: readonly string[] }) {
  return (
    <ol className="grid gap-2">
      {goals.map((goal, index) => <li key={goal} className={index === 0 ? 'text-lg font-bold' : ''}>{goal}</li>)}
    </ol>
  )
}
