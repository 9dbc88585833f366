/** One line of a benchmark's answer, printed as `name: value unit`. */
export type BenchRow = { readonly name: string; readonly value: number; readonly unit: string }

/** What a file in scripts/bench exports as its default: rows all at the end, or one by one as they are known. */
export type Bench = () => Promise<readonly BenchRow[]> | AsyncIterable<BenchRow>
