import { useId, type ChangeEventHandler, type ReactNode } from 'react'
import { FieldError } from './field'

export type Pill = { readonly value: string; readonly label: ReactNode; readonly hint?: ReactNode }

type RadioPillsProps = {
  readonly legend: string
  readonly name: string
  readonly pills: readonly Pill[]
  /** Uncontrolled: the pill chosen to begin with. */
  readonly defaultValue?: string
  /** Controlled, with onChange. */
  readonly value?: string
  readonly onChange?: ChangeEventHandler<HTMLInputElement>
  readonly required?: boolean
  readonly error?: string | null
  /** Leaves the legend to screen readers where the heading already asks the question. */
  readonly legendHidden?: boolean
}

/** One of a few, as native radio buttons in 48 px plates. The chosen one is ink with a filled dot. */
export function RadioPills({ legend, name, pills, defaultValue, value, onChange, required, error, legendHidden = false }: RadioPillsProps) {
  const id = useId()
  return (
    <fieldset aria-describedby={error ? `${id}-error` : undefined} className="grid gap-2">
      <legend className={legendHidden ? 'sr-only' : 'mb-2 font-bold'}>{legend}</legend>
      <div className="flex flex-wrap gap-2">
        {pills.map((pill) => (
          <label
            key={pill.value}
            className="flex min-h-12 items-center gap-2.5 rounded-plate border-[1.5px] border-ink bg-plate px-4 py-2 font-head text-xl leading-tight font-semibold has-checked:bg-ink has-checked:text-paper has-focus-visible:outline-3 has-focus-visible:outline-offset-3 has-focus-visible:outline-focus"
          >
            <input
              type="radio"
              name={name}
              value={pill.value}
              required={required}
              onChange={onChange}
              {...(value === undefined ? { defaultChecked: pill.value === defaultValue } : { checked: pill.value === value })}
              className="size-5 shrink-0 appearance-none rounded-full border-2 border-current outline-none checked:border-[6px]"
            />
            <span>
              {pill.label}
              {pill.hint && <span className="block font-text text-base font-normal">{pill.hint}</span>}
            </span>
          </label>
        ))}
      </div>
      {error && <FieldError id={`${id}-error`}>{error}</FieldError>}
    </fieldset>
  )
}
